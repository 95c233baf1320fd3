import type { ScoreCell } from '../../engrave/score.ts';
import type { ShowTuneBlock, TuneBlock } from '../../read/book.ts';
import { byEarView } from '../by-ear-view.ts';
import { titleOf, tuneKind } from '../lists-view.ts';
import { cellsOver, notationView } from '../notation-view.ts';
import { eventsOfRange } from '../note-range.ts';
import { claimId, mayShow, type PageContext, tunePath } from '../page-context.ts';
import { playerView } from '../player-view.ts';
import { type Html, render } from '../render.ts';

/** Makes the HTML of a tune on a lesson or other page. `story` makes the text around its fence. */
export function tuneHtml(
  block: TuneBlock | ShowTuneBlock,
  story: () => Html | null,
  context: PageContext,
): string {
  const id = block.kind === 'tune' ? block.id : block.of;
  const tune = context.input.tunes.get(id);
  if (!tune) throw new Error(`the tune ${id} was not built`);
  const { study, score } = tune;
  const shown = study && score && mayShow(tune, context.input);
  const range = study && block.kind === 'show-tune' && block.bars;
  const events = range ? eventsOfRange(study.tune, range) : null;
  const cells = study && score && events ? cellsOver(study, score, events) : (score?.cells ?? []);
  return render(
    'parts/tune',
    {
      id: claimId(context, id),
      title: titleOf(tune),
      kind: study === null ? null : tuneKind(study, context.words),
      href: context.root + tunePath(id),
      byEar: shown && block.byEar ? byEarView(study, events, context.words) : null,
      notation: shown ? notationView(id, score, context, cells) : null,
      player: shown ? playerView(tune, context, events && phrasesOf(cells)) : null,
      whyNoNotation:
        study === null || score === null
          ? context.words.siteWords.unreadable
          : context.words.siteWords.withheld,
      story: story(),
      credits: tune.credits,
    },
    context.words,
  );
}

/** The phrases of some cells, each once. */
const phrasesOf = (cells: readonly ScoreCell[]): readonly number[] => [
  ...new Set(cells.map(c => c.phrase)),
];
