import type { Anchor, LeadIn, Plan } from '../../shared/bowing/bowing.ts';
import type { Direction } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import { editSentence, planSentence } from '../../shared/words/en/bowing.ts';
import { leadInSentences, strokeCount } from '../../shared/words/en/plans.ts';
import { siteWords } from '../../shared/words/en/site.ts';
import { spokenPitch } from '../../shared/words/en/spoken.ts';

/** How to reach an anchor, told and drawn. */
export interface PlanView {
  readonly leadIns: readonly {
    readonly told: readonly string[];
    readonly plans: readonly PlanLine[];
  }[];
  /** Single changes, each of which alone mends every missed arrival. */
  readonly mends: readonly string[];
}

interface PlanLine {
  readonly sentence: string;
  readonly strokes: readonly {
    readonly direction: Direction;
    readonly alt: string;
    readonly notes: string;
    /** Bar that its first note opens; null within a bar. */
    readonly bar: string | null;
  }[];
}

/** More than this many and a class no longer chooses. */
const mostPlans = 3;
const mostMends = 5;

export function planView(study: Study, anchor: Anchor): PlanView {
  return {
    leadIns: anchor.leadIns.map(leadIn => ({
      told: leadInSentences(study, anchor, leadIn),
      plans: leadIn.plans.slice(0, mostPlans).map(plan => ({
        sentence: `${planSentence(study.tune, plan)} ${strokeCount(plan.strokes)}`,
        strokes: drawnStrokes(study, leadIn, plan),
      })),
    })),
    mends: anchor.mends.slice(0, mostMends).map(edit => editSentence(study.tune, edit)),
  };
}

/** Every stroke of the lead-in under a plan: strokes take turns from its start. */
function drawnStrokes(study: Study, leadIn: LeadIn, plan: Plan): PlanLine['strokes'] {
  const groupOf = new Map(plan.slurs.flatMap(group => group.map(event => [event, group] as const)));
  const strokes: number[][] = [];
  let before: number | null = null;
  for (const event of leadIn.notes) {
    const group = groupOf.get(event);
    const slurred = before !== null && group !== undefined && groupOf.get(before) === group;
    if (slurred) strokes.at(-1)?.push(event);
    else strokes.push([event]);
    before = event;
  }
  return strokes.map((events, i) => {
    const direction = (leadIn.start === 'down') === (i % 2 === 0) ? 'down' : 'up';
    return {
      direction,
      alt: siteWords[direction],
      notes: events.map(e => noteName(study, e)).join(' '),
      bar: barOpened(study, events[0], strokes[i - 1]?.at(-1)),
    };
  });
}

function barOpened(study: Study, event = -1, before = -1): string | null {
  const bar = study.tune.events[event]?.bar ?? -1;
  return bar === study.tune.events[before]?.bar ? null : (study.tune.bars[bar]?.name ?? null);
}

function noteName(study: Study, event: number): string {
  const note = study.tune.events[event];
  return note?.kind === 'note' ? note.pitches.map(spokenPitch).join(' and ') : '';
}
