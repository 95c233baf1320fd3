import type { LeadIn, Stroke } from '../bowing/bowing.ts';
import type { Direction } from '../music/tune.ts';
import { at } from '../must.ts';
import { leadInOfPass, type Outcome } from './trial.ts';

/** One note of a lead-in with the stroke it is played in. */
export interface WayNote {
  /** Event index of the written note. */
  readonly event: number;
  readonly direction: Direction;
  /** Its number in its stroke, from 1, and the stroke's number of notes, inside the lead-in. */
  readonly at: number;
  readonly of: number;
  /** Name of the bar that it is the first of in the lead-in; null for any other note. */
  readonly opensBar: string | null;
}

export interface WayThere {
  readonly leadIn: LeadIn;
  readonly notes: readonly WayNote[];
  /** Event indices of the notes in the anchor's first stroke. */
  readonly passage: readonly number[];
}

/** The lead-in as bowed, for one pass of the anchor (from 1); null where that pass has no lead-in. */
export function wayThere(outcome: Outcome, pass: number): WayThere | null {
  const leadIn = leadInOfPass(outcome, pass);
  if (leadIn === null) return null;
  const { tune, performance, bowing } = outcome.study;
  const { notes } = performance;
  const goal = notes.findIndex(n => n.event === outcome.anchor.first && n.pass === pass);
  const from = goal - leadIn.notes.length;
  const strokeAt = (k: number): Stroke => at(bowing.plan.strokes, at(bowing.plan.strokeOf, k));
  const barOf = (event: number): number => at(tune.events, event).bar;
  return {
    leadIn,
    notes: leadIn.notes.map((event, i) => {
      const k = from + i;
      const { direction, notes: bowed } = strokeAt(k);
      const own = bowed.filter(n => n >= from && n < goal);
      const bar = barOf(event);
      const opens = i === 0 || barOf(at(leadIn.notes, i - 1)) !== bar;
      return {
        event,
        direction,
        at: own.indexOf(k) + 1,
        of: own.length,
        opensBar: opens ? at(tune.bars, bar).name : null,
      };
    }),
    passage: strokeAt(goal).notes.map(k => at(notes, k).event),
  };
}

/**
 * Runs of notes whose stroke differs between two outcomes, each as its first and last event. Every note
 * of `after` where there is no `before`.
 */
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
