import type { Anchor } from '../../shared/bowing/bowing.ts';
import type { Level } from '../../shared/bowing/settings.ts';
import { at } from '../../shared/must.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import type { BuiltTune } from './built-tune.ts';
import { cellId, cellsOver, type NotationView, notationView } from './notation-view.ts';
import type { PageContext } from './page-context.ts';

/** A fold in which students try strokes of their own. Its script fills it when it is opened. */
export interface TryView {
  readonly anchor: string;
  readonly tune: string;
  readonly root: string;
  /** Level to try under; empty for the book's. */
  readonly level: string;
  readonly preset: string;
  /** Ids of the cells that the page already shows; empty where the fold has its own notation. */
  readonly cells: string;
  /** Notation for the fold; null where the page already shows it. */
  readonly notation: NotationView | null;
  readonly words: Words['tryWords'];
}

/** Describes the fold of an anchor; null where no slur before the anchor can be changed. */
export function tryView(
  tune: BuiltTune & { readonly study: Study },
  anchor: Anchor,
  asked: { readonly level: Level | null; readonly preset: string | null },
  context: PageContext,
): TryView | null {
  if (!anchor.leadIns.some(l => l.notes.length > 1)) return null;
  const { block, study, score } = tune;
  const cells = score ? cellsOfWays(study, score, anchor) : [];
  const ids = cells.map(c => cellId(block.id, c.name));
  const onPage = ids.every(id => context.ids.has(id));
  return {
    anchor: anchor.id,
    tune: block.id,
    root: context.root,
    level: asked.level ?? '',
    preset: asked.preset ?? '',
    cells: onPage ? ids.join(' ') : '',
    notation: score && !onPage ? notationView(block.id, score, context, cells, 'excerpt') : null,
    words: context.words.tryWords,
  };
}

/** The cells of the passage and of every lead-in. */
function cellsOfWays(study: Study, score: Score, anchor: Anchor): readonly ScoreCell[] {
  const events = anchor.leadIns.flatMap(l => l.notes);
  const bars = new Set(events.map(e => at(study.tune.events, e).bar));
  const passage = cellsOver(study, score, anchor);
  return score.cells.filter(c => passage.includes(c) || c.bars.some(b => bars.has(b)));
}
