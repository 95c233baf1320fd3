import { applyEdit } from '../../shared/bowing/apply-edit.ts';
import { bestPlan } from '../../shared/bowing/best-plan.ts';
import { bowPath, strokesOfPlan, wholeBow } from '../../shared/bowing/bow-path.ts';
import type { Anchor, LeadIn, Plan } from '../../shared/bowing/bowing.ts';
import type { Level } from '../../shared/bowing/settings.ts';
import { editedBars } from '../../shared/music/edited-abc.ts';
import type { Direction } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import { type BowPicture, bowPicture } from './bow-picture.ts';
import { type BuiltTune, planKey } from './built-tune.ts';
import { cellsOver, type NotationView, notationView } from './notation-view.ts';
import type { PageContext } from './page-context.ts';

/** How to reach an anchor, in sentences and drawings. */
export interface PlanView {
  readonly leadIns: readonly {
    readonly told: readonly string[];
    readonly plans: readonly PlanLine[];
    /** That more ways arrive than are shown; null where none do. */
    readonly morePlans: string | null;
    /** The best plan, drawn; one lead-in of an anchor has it. */
    readonly drawn: DrawnPlan | null;
  }[];
  /** Why no plan is shown; null where one is. */
  readonly noPlan: string | null;
  /** Single changes, each of which alone mends every missed arrival. */
  readonly mends: readonly {
    readonly sentence: string;
    /** The bars to write for it. */
    readonly bars: readonly { readonly bar: string; readonly abc: string }[];
  }[];
  /** How many more there are; null where all are listed. */
  readonly moreMends: string | null;
}

interface DrawnPlan {
  readonly title: string;
  readonly notation: NotationView | null;
  readonly bow: { readonly picture: BowPicture; readonly told: readonly string[] };
}

interface PlanLine {
  readonly sentence: string;
  readonly strokes: readonly {
    readonly direction: Direction;
    readonly alt: string;
    readonly notes: string;
    /** Name of the bar that its first note opens; null within a bar. */
    readonly bar: string | null;
  }[];
}

/** Most plans of a lead-in that a page shows. */
const mostPlans = 3;

/**
 * Describes how to reach an anchor. The longest stroke of `level` (null: the book's) is taken for a whole bow; the
 * plans of the anchor must have been made for that level.
 */
export function planView(
  tune: BuiltTune & { readonly study: Study },
  anchor: Anchor,
  level: Level | null,
  context: PageContext,
): PlanView {
  const { study } = tune;
  const best = bestPlan(anchor.leadIns);
  const { words } = context;
  return {
    leadIns: anchor.leadIns.map(leadIn => ({
      told: words.leadInSentences(study, anchor, leadIn, words.noteNames),
      plans: leadIn.plans.slice(0, mostPlans).map(plan => ({
        sentence: `${words.planSentence(study.tune, plan)} ${words.strokeCount(plan.strokes)}`,
        strokes: drawnStrokes(study, leadIn, plan, words),
      })),
      morePlans: words.moreWays(leadIn, Math.min(mostPlans, leadIn.plans.length)),
      drawn: leadIn === best?.leadIn ? drawnPlan(tune, anchor, best, level, context) : null,
    })),
    noPlan: words.noPlanSentence(anchor),
    mends: anchor.mends.map(edit => ({
      sentence: words.editSentence(study.tune, edit),
      bars: editedBars(study.tune, applyEdit(study.tune, edit)),
    })),
    moreMends: words.moreMends(anchor.moreMends),
  };
}

/** Draws lead-in and passage with the plan's slurs, and the place of its notes on the bow. */
function drawnPlan(
  tune: BuiltTune & { readonly study: Study },
  anchor: Anchor,
  { leadIn, plan }: { readonly leadIn: LeadIn; readonly plan: Plan },
  level: Level | null,
  context: PageContext,
): DrawnPlan {
  const { study, block } = tune;
  const { words } = context;
  const score = plan.changes.length === 0 ? tune.score : (tune.planned.get(planKey(plan)) ?? null);
  const settings = context.input.book.settings.bowing;
  const bow = wholeBow(study.tune, settings, level ?? settings.level);
  const path = bowPath(study.performance, leadIn, plan, bow);
  return {
    title: words.drawnPlanTitle(leadIn, anchor.leadIns.length > 1),
    notation:
      score &&
      notationView(block.id, score, context, cellsOfWay(study, score, leadIn, anchor), 'excerpt'),
    bow: {
      picture: bowPicture(study.tune, path),
      told: words.bowPathSentences(study.tune, path, plan, words.noteNames),
    },
  };
}

/** The cells of the lead-in and the passage, without endings that are skipped. */
function cellsOfWay(
  study: Study,
  score: Score,
  leadIn: LeadIn,
  anchor: Anchor,
): readonly ScoreCell[] {
  const bars = new Set(leadIn.notes.map(e => at(study.tune.events, e).bar));
  const passage = cellsOver(study, score, anchor);
  return score.cells.filter(c => passage.includes(c) || c.bars.some(b => bars.has(b)));
}

/** Every stroke of the lead-in under a plan. */
function drawnStrokes(study: Study, leadIn: LeadIn, plan: Plan, words: Words): PlanLine['strokes'] {
  const strokes = strokesOfPlan(leadIn.notes, plan);
  return strokes.map((events, i) => {
    const direction = (leadIn.start === 'down') === (i % 2 === 0) ? 'down' : 'up';
    return {
      direction,
      alt: words.siteWords[direction],
      notes: events.map(e => noteName(study, e, words)).join(' '),
      bar: barOpened(study, at(events, 0), strokes[i - 1]?.at(-1) ?? null),
    };
  });
}

/** Name of the bar that an event opens; null where the event before it stands in the same bar. */
function barOpened({ tune }: Study, event: number, before: number | null): string | null {
  const { bar } = at(tune.events, event);
  if (before !== null && bar === at(tune.events, before).bar) return null;
  return at(tune.bars, bar).name;
}

function noteName(study: Study, event: number, words: Words): string {
  const note = at(study.tune.events, event);
  return note.kind === 'note' ? words.spokenPitches(note.pitches, words.noteNames) : '';
}
