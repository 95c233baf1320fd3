import type { LeadIn } from '../bowing/bowing.ts';
import type { Direction } from '../music/tune.ts';
import { leadInOfPass, type Outcome } from './trial.ts';

/** One note of the way to an anchor as it is bowed, and of the anchor's first stroke after it. */
export interface WayNote {
  /** Event index of the written note. */
  readonly event: number;
  readonly direction: Direction;
  /** Its number in its stroke, from 1, and how many notes the stroke has on the way. */
  readonly at: number;
  readonly of: number;
  /** Bar that it opens on the way; null within a bar. */
  readonly opensBar: string | null;
}

export interface WayThere {
  readonly leadIn: LeadIn;
  readonly notes: readonly WayNote[];
  /** Notes of the passage's first stroke. */
  readonly passage: readonly number[];
}

/** The way to the anchor at one of its playings; null where nothing free leads into it. */
export function wayThere(outcome: Outcome, pass: number): WayThere | null {
  const leadIn = leadInOfPass(outcome, pass);
  if (leadIn === null) return null;
  const { tune, performance, bowing } = outcome.study;
  const { notes } = performance;
  const goal = notes.findIndex(n => n.event === outcome.anchor.first && n.pass === pass);
  const from = goal - leadIn.notes.length;
  const strokeAt = (k: number): number => bowing.plan.strokeOf[k] ?? -1;
  const passage = bowing.plan.strokes[strokeAt(goal)]?.notes ?? [goal];
  return {
    leadIn,
    notes: leadIn.notes.map((event, i) => {
      const k = from + i;
      const stroke = bowing.plan.strokes[strokeAt(k)]?.notes ?? [k];
      const own = stroke.filter(n => n >= from && n < goal);
      const bar = tune.events[event]?.bar ?? -1;
      const before = tune.events[leadIn.notes[i - 1] ?? -1]?.bar;
      return {
        event,
        direction: bowing.plan.strokes[strokeAt(k)]?.direction ?? 'down',
        at: own.indexOf(k) + 1,
        of: own.length,
        opensBar: bar === before ? null : (tune.bars[bar]?.name ?? null),
      };
    }),
    passage: passage.map(k => notes[k]?.event ?? -1),
  };
}

/** Runs of the way's notes, as first and last event, whose stroke differs between two outcomes. */
export function turnedRuns(
  before: WayThere | null,
  after: WayThere,
): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  let open = false;
  after.notes.forEach((note, i) => {
    const turned = before?.notes[i]?.direction !== note.direction;
    const run = runs.at(-1);
    if (turned && open && run) run[1] = note.event;
    else if (turned) runs.push([note.event, note.event]);
    open = turned;
  });
  return runs;
}
