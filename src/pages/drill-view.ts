import type { Level } from '../../shared/bowing/settings.ts';
import { type DrillKind, drillKinds } from '../../shared/drills/drill.ts';
import { type DrillSource, drillSource } from '../../shared/drills/drill-source.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import type { Direction } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import type { Bead, ToldDrill, ToldItem } from '../../shared/words/told-drill.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { DrillBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { titleOf } from './lists-view.ts';
import { claimId, mayShow, type PageContext, tunePath } from './page-context.ts';
import type { Html } from './render.ts';
import { strokeSign } from './stroke-sign.ts';

/** A drill on a page: question, and answer in a fold. Its script replaces both by an interactive form. */
export interface DrillView {
  readonly kind: DrillKind;
  readonly tune: string;
  readonly root: string;
  readonly level: Level;
  readonly seed: number;
  /** Id of the anchor it is about; empty for any. */
  readonly to: string;
  /** Id of its answer on the printed page; null where it is not printed. */
  readonly paper: string | null;
  readonly title: string;
  /** Title and link of its tune; null on the tune's own page. */
  readonly on: { readonly title: string; readonly href: string } | null;
  readonly levelName: string;
  readonly levelSays: string;
  readonly question: readonly string[];
  readonly chains: readonly { readonly name: string | null; readonly beads: readonly BeadView[] }[];
  readonly items: readonly ItemView[];
  readonly answer: readonly string[];
  readonly why: string;
  readonly words: Words['drillWords'];
}

/** The answer of a drill, for the end of the printed page. */
export interface PaperAnswer {
  readonly id: string;
  readonly name: string;
  readonly answer: readonly string[];
  readonly why: string;
}

interface BeadView {
  readonly classes: string;
  readonly letter: string | null;
  readonly long: boolean;
  readonly said: string;
  readonly where: string | null;
  readonly stroke: Direction | null;
  /** Stroke sign above it; empty where none is shown. */
  readonly sign: Html | '';
  readonly bar: string | null;
}

interface ItemView {
  readonly ask: string;
  readonly choices: readonly {
    readonly label: string;
    readonly beads: readonly BeadView[] | null;
  }[];
  /** Choices that are single notes, as one chain to point into; null where the choices are shown separately. */
  readonly row: readonly BeadView[] | null;
}

/** Describes a drill block; a sentence that says why where the tune gives no such drill. */
export function drillView(
  block: Pick<DrillBlock, 'drill' | 'of' | 'to' | 'level' | 'seed'>,
  tune: BuiltTune & { readonly study: Study },
  context: PageContext,
): DrillView | string {
  const { words } = context;
  const source = sourceOf(tune, context);
  const ask = {
    kind: block.drill,
    level: block.level ?? context.input.book.settings.bowing.level,
    seed: block.seed,
    to: block.to,
  };
  const { drill, why } = makeDrill(source, ask);
  if (!drill) return words.noDrillSentence(why);
  const told = words.tellDrill(source, drill, words.noteNames);
  const title = titleOf(tune);
  const on = { title, href: context.root + tunePath(block.of) };
  const paper = paperId(context, told.kind);
  context.answers.push({
    id: paper,
    name: words.drillWords.answerTo(told.title, title),
    answer: told.answer,
    why: told.why,
  });
  return { ...viewOf(told, context), ...ask, tune: block.of, to: block.to ?? '', paper, on };
}

/** Describes one drill of every kind that the tune can give, for the tune's own page. */
export function practiceViews(
  tune: BuiltTune & { readonly study: Study },
  context: PageContext,
): readonly DrillView[] {
  const { words } = context;
  const source = sourceOf(tune, context);
  const { level } = context.input.book.settings.bowing;
  return drillKinds.flatMap(kind => {
    const { drill } = makeDrill(source, { kind, level, seed: 1, to: null });
    if (!drill) return [];
    const view = viewOf(words.tellDrill(source, drill, words.noteNames), context);
    return [{ level, seed: 1, tune: tune.block.id, to: '', paper: null, on: null, ...view }];
  });
}

type OwnView = Omit<DrillView, 'tune' | 'to' | 'seed' | 'level' | 'paper' | 'on'>;

function viewOf(told: ToldDrill, context: PageContext): OwnView {
  context.scripts.add('drills');
  const { drillTitles, drillWords } = context.words;
  return {
    kind: told.kind,
    root: context.root,
    title: drillTitles[told.kind],
    levelName: drillWords.levelIs(told.level),
    levelSays: told.levelSays,
    question: told.question,
    chains: told.chains.map(c => ({ name: c.name, beads: c.beads.map(beadIn(context.words)) })),
    items: told.items.filter(item => item.form === 'buttons').map(i => itemView(i, context.words)),
    answer: told.answer,
    why: told.why,
    words: drillWords,
  };
}

/** Choices of one bead each, such as the notes of a phrase, are shown as one chain to point into. */
function itemView({ ask, choices }: ToldItem, words: Words): ItemView {
  const beadView = beadIn(words);
  const row = choices.flatMap(c => (c.beads?.length === 1 ? c.beads : []));
  const isRow = row.length > 1;
  return {
    ask,
    choices: choices
      .filter(c => !(isRow && c.beads))
      .map(c => ({ label: c.label, beads: c.beads?.map(beadView) ?? null })),
    row: isRow ? row.map(beadView) : null,
  };
}

const beadIn =
  (words: Words) =>
  (bead: Bead): BeadView => ({
    classes: `bead-cell${bead.slurred ? ' threaded' : ''}${bead.anchored ? ' anchored' : ''}`,
    letter: bead.letter,
    long: (bead.letter?.length ?? 0) > 3,
    said: bead.said,
    where: bead.where,
    stroke: bead.stroke,
    sign: bead.stroke === null || bead.slurred ? '' : strokeSign(bead.stroke, words),
    bar: bead.bar,
  });

/** Whether a tune's drills may stand on the page: they show its notes. */
export const mayDrill = (
  tune: BuiltTune,
  context: PageContext,
): tune is BuiltTune & { readonly study: Study } =>
  tune.study !== null && mayShow(tune, context.input);

/** As the tune was studied: see `buildTune`. */
function sourceOf(
  { block, study }: BuiltTune & { readonly study: Study },
  context: PageContext,
): DrillSource {
  const { bowing } = context.input.book.settings;
  return drillSource(study, {
    bowing: { ...bowing, restart: block.restart ?? bowing.restart },
    start: block.start,
  });
}

function paperId(context: PageContext, kind: DrillKind): string {
  for (let n = 1; ; n++) {
    const id = claimId(context, `answer-${kind}-${n}`);
    if (id !== null) return id;
  }
}
