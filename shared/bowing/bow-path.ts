import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  subtract,
  zero,
} from '../music/fraction.ts';
import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import type { Direction, LeadIn, Plan } from './bowing.ts';
import { notesInSeconds, slowTempo } from './paces.ts';
import type { BowingSettings, Level } from './settings.ts';

/**
 * Part of the bow used for each note of a lead-in: a model, not a measurement.
 *
 * The model assumes constant bow speed: a down-bow moves from the frog towards the tip, an up-bow back, and
 * the length of bow used is proportional to time. A whole bow lasts as long as the longest stroke that the
 * level allows, at the slow practice tempo; a book can change both. Places are distances from the frog, in
 * whole notes.
 *
 * A crotchet down, a quaver up, a crotchet down, a quaver up: the places are 0 → ¼ → ⅛ → ⅜ → ¼. The
 * bow has drifted ¼ towards the tip and has used a range of ⅜. A bow of ½ is enough: begun 1/16 from the
 * frog, it leaves 1/16 free at either end. A bow of ¼ is not: it runs out in the third stroke, wherever it
 * began, since the range is then ⅜.
 *
 * A player makes room by moving the bow faster on a short stroke or slower on a long one. The model shows
 * where that is needed.
 */
export interface BowPath {
  /** A whole bow: the tip's distance from the frog. */
  readonly bow: Fraction;
  /** Best place to begin the first stroke. */
  readonly start: Fraction;
  /** Where the last one ends, if the bow has not run out. */
  readonly end: Fraction;
  readonly strokes: readonly BowSpan[];
  /** Least and greatest place reached; below 0 or past `bow` where the bow runs out. */
  readonly least: Fraction;
  readonly most: Fraction;
  /** Index of the stroke in which the bow runs out, wherever it began; null where the bow is long enough. */
  readonly runsOut: number | null;
}

/** One stroke, from one place on the bow to another. */
export interface BowSpan {
  readonly direction: Direction;
  readonly from: Fraction;
  readonly to: Fraction;
  readonly notes: readonly BowPlace[];
}

/** A written note (event index), and the bow that it takes. */
export interface BowPlace {
  readonly event: number;
  readonly from: Fraction;
  readonly to: Fraction;
}

/** Computes the path of the bow under a plan of a lead-in. `bow` is the length of a whole bow, in whole notes. */
export function bowPath(
  performance: Performance,
  leadIn: Pick<LeadIn, 'notes' | 'start' | 'passes'>,
  plan: Pick<Plan, 'slurs'>,
  bow: Fraction,
): BowPath {
  const groups = strokesOfPlan(leadIn.notes, plan);
  let at = zero;
  const fromZero = groups.map((events, s): BowSpan => {
    const direction = (leadIn.start === 'down') === (s % 2 === 0) ? 'down' : 'up';
    const from = at;
    const notes = events.map((event): BowPlace => {
      const before = at;
      const time = lengthOf(performance, event, leadIn.passes);
      at = direction === 'down' ? add(at, time) : subtract(at, time);
      return { event, from: before, to: at };
    });
    return { direction, from, to: at, notes };
  });
  const { runsOut, least, most } = rangeWithin(fromZero, bow);
  // A range that fits is put in the middle of the bow. Where the bow runs out, the range fills it from the
  // end at which the last stroke begins.
  const spare = divide(subtract(bow, subtract(most, least)), fraction(2));
  const start = subtract(compare(spare, zero) < 0 ? zero : spare, least);
  const moved = (place: Fraction): Fraction => add(place, start);
  const strokes = fromZero.map(s => ({
    ...s,
    from: moved(s.from),
    to: moved(s.to),
    notes: s.notes.map(n => ({ ...n, from: moved(n.from), to: moved(n.to) })),
  }));
  const ends = [start, ...strokes.map(s => s.to)];
  return {
    bow,
    start,
    end: moved(at),
    strokes,
    least: ends.reduce((a, b) => (compare(b, a) < 0 ? b : a)),
    most: ends.reduce((a, b) => (compare(b, a) > 0 ? b : a)),
    runsOut,
  };
}

/** The strokes up to the one whose range exceeds the bow, and the range of those before it. */
function rangeWithin(
  strokes: readonly BowSpan[],
  bow: Fraction,
): { readonly runsOut: number | null; readonly least: Fraction; readonly most: Fraction } {
  let [least, most] = [zero, zero];
  for (const [s, { to }] of strokes.entries()) {
    const lower = compare(to, least) < 0 ? to : least;
    const higher = compare(to, most) > 0 ? to : most;
    if (compare(subtract(higher, lower), bow) > 0) {
      // This last stroke gets all the bow there is, so that it runs out as late as possible.
      return compare(to, least) < 0
        ? { runsOut: s, least: subtract(most, bow), most }
        : { runsOut: s, least, most: add(least, bow) };
    }
    [least, most] = [lower, higher];
  }
  return { runsOut: null, least, most };
}

/** Groups the notes of a lead-in by the strokes of a plan. */
export function strokesOfPlan(
  notes: readonly number[],
  { slurs }: Pick<Plan, 'slurs'>,
): readonly (readonly number[])[] {
  const groupOf = new Map(slurs.flatMap(group => group.map(event => [event, group] as const)));
  const strokes: number[][] = [];
  let before: number | null = null;
  for (const event of notes) {
    const group = groupOf.get(event);
    const slurred = before !== null && group !== undefined && groupOf.get(before) === group;
    if (slurred) strokes.at(-1)?.push(event);
    else strokes.push([event]);
    before = event;
  }
  return strokes;
}

/** Length of a note with its ties, in whole notes, in the first of some passes. */
function lengthOf({ notes }: Performance, event: number, passes: readonly number[]): Fraction {
  const played = notes.filter(n => n.event === event);
  const sounded = played.find(n => passes.includes(n.pass)) ?? played[0];
  if (!sounded) throw new Error(`event ${event} is not played`);
  return sounded.duration;
}

/** Length of a whole bow in whole notes, rounded: the level's longest stroke, at the slow practice tempo. */
export function wholeBow(tune: Tune, settings: BowingSettings, level: Level): Fraction {
  const notes = notesInSeconds(slowTempo(tune, settings), settings.limits[level].longestStroke);
  return fraction(Math.round(notes * 960), 960);
}
