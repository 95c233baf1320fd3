import { anchorStandouts } from '../../shared/bowing/anchor-standouts.ts';
import type { Anchor } from '../../shared/bowing/bowing.ts';
import { barRangeText } from '../../shared/music/bar-range.ts';
import type { Direction } from '../../shared/music/tune.ts';
import { chooseStandouts, type StandoutName } from '../../shared/sections/standout-names.ts';
import type { Study } from '../../shared/study.ts';
import type { AnchorBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { titleOf } from './lists-view.ts';
import { cellsOver, type NotationView, notationView } from './notation-view.ts';
import { claimId, mayShow, type PageContext, tunePath } from './page-context.ts';
import { type PlanView, planView } from './plan-view.ts';
import type { Html } from './render.ts';
import { type TryView, tryView } from './try-view.ts';

/**
 * Fields of `parts/anchor`: an anchor, its passage in notes, how the bow comes to it, and what is
 * asked for besides.
 */
export interface AnchorView {
  readonly id: string | null;
  readonly where: string;
  readonly href: string;
  readonly notation: NotationView | null;
  /** Stroke that the passage starts on; null, as `reachIt` is, where the passage was not found in the tune. */
  readonly direction: Direction | null;
  readonly reachIt: string | null;
  readonly why: Html | null;
  /** What stands out in it: a few short facts, for the memory. */
  readonly standouts: readonly string[];
  readonly arrivals: readonly { readonly agrees: boolean; readonly sentence: string }[];
  /** Ways to reach the anchor; null where the caller did not ask for them. */
  readonly plan: PlanView | null;
  /** Fold in which students try strokes of their own; null where a plan block of the page has it. */
  readonly trial: TryView | null;
}

/**
 * Describes an anchor: its notation, the reason for it, its stroke, and whether the bow arrives on that. What
 * would show notes is empty or null where the tune may not be shown.
 */
export function anchorView(
  block: AnchorBlock,
  tune: BuiltTune,
  why: Html | null,
  context: PageContext,
  withPlan = false,
): AnchorView {
  const { study, score } = tune;
  const { siteWords, arrivalSentences } = context.words;
  const anchor = study?.bowing.anchors.find(a => a.id === block.id);
  const shown = study && anchor && mayShow(tune, context.input);
  return {
    id: claimId(context, block.id),
    where: siteWords.anchorOf(titleOf(tune), barRangeText(block.bars)),
    href: `${context.root}${tunePath(block.of)}`,
    notation:
      shown && score
        ? notationView(block.of, score, context, cellsOver(study, score, anchor), 'excerpt')
        : null,
    direction: anchor?.direction ?? null,
    reachIt: anchor ? siteWords.reachIt(anchor.direction) : null,
    why,
    standouts: shown ? standoutsView(study, anchor, block.standsOut, context) : [],
    arrivals: shown ? arrivalSentences(anchor) : [],
    plan: shown && withPlan ? planView({ ...tune, study }, anchor, null, context) : null,
    trial:
      shown && (withPlan || !isPlanned(block, context))
        ? tryView({ ...tune, study }, anchor, ownWay, context)
        : null,
  };
}

/** No level or preset of its own: those of the book hold. */
const ownWay = { level: null, preset: null };

/** Whether the page has a plan block for the anchor, which then has the fold to try strokes. */
const isPlanned = ({ id }: AnchorBlock, { page }: PageContext): boolean =>
  page?.blocks.some(b => b.kind === 'plan' && b.to === id && b.hidden !== true) === true;

function standoutsView(
  { tune, tuning, performance, fingering, bowing }: Study,
  anchor: Anchor,
  keep: readonly StandoutName[] | null,
  { words }: PageContext,
): readonly string[] {
  const standouts = anchorStandouts(tune, performance, fingering, bowing.plan, anchor);
  return chooseStandouts(standouts, keep).map(standout =>
    words.standoutSentence(tune, tuning, standout, words.noteNames),
  );
}
