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
 * Where on the bow each note of a lead-in falls: a model, not a measurement.
 *
 * The bow is taken to move at one speed, so that bow is used as time passes: down-bows lead from the
 * frog to the tip, up-bows back. A whole bow lasts as long as the longest stroke that the level
 * allows, at the slow practice tempo; both are starting points that a book can change. Places are in
 * whole notes from the frog.
 *
 * A crotchet down, a quaver up, a crotchet down, a quaver up: the places run 0 → ¼ → ⅛ → ⅜ → ¼. The
 * bow has drifted ¼ toward the tip and has ranged over ⅜. A bow of ½ holds that: begun 1/16 from the
 * frog, it keeps 1/16 free at either end. A bow of ¼ does not: it runs out in the third stroke,
 * wherever it began, for by then the strokes have ranged over ⅜.
 *
 * A player makes room by moving the bow faster on a short stroke or slower on a long one. What the
 * model shows is where that must be done.
 */
export interface BowPath {
  /** A whole bow: the tip's distance from the frog. */
  readonly bow: Fraction;
  /** Where the first stroke is best begun. */
  readonly start: Fraction;
  /** Where the last one ends, if the bow has not run out. */
  readonly end: Fraction;
  readonly strokes: readonly BowSpan[];
  /** Least and greatest place reached; below 0 or past `bow` where the bow runs out. */
  readonly least: Fraction;
  readonly most: Fraction;
  /** Index of the stroke in which the bow runs out, wherever it began; null where it lasts. */
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

/** The bow's path under a plan of a lead-in. `bow` is the length of a whole bow, in whole notes. */
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
  // The range that fits lies in the middle of the bow; where the bow runs out it fills the bow from
  // the end that the last stroke sets out from.
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

/** The strokes up to the one that ranges over more than a bow, and what those before range over. */
function rangeWithin(
  strokes: readonly BowSpan[],
  bow: Fraction,
): { readonly runsOut: number | null; readonly least: Fraction; readonly most: Fraction } {
  let [least, most] = [zero, zero];
  for (const [s, { to }] of strokes.entries()) {
    const lower = compare(to, least) < 0 ? to : least;
    const higher = compare(to, most) > 0 ? to : most;
    if (compare(subtract(higher, lower), bow) > 0) {
      // Every bit of bow is given to this last stroke, so that it runs out as late as it can.
      return compare(to, least) < 0
        ? { runsOut: s, least: subtract(most, bow), most }
        : { runsOut: s, least, most: add(least, bow) };
    }
    [least, most] = [lower, higher];
  }
  return { runsOut: null, least, most };
}

/** The notes of a lead-in gathered into the strokes of a plan. */
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

/** How long a note sounds, ties counted in, in the first of these passes. */
function lengthOf({ notes }: Performance, event: number, passes: readonly number[]): Fraction {
  const played = notes.filter(n => n.event === event);
  const sounded = played.find(n => passes.includes(n.pass)) ?? played[0];
  if (!sounded) throw new Error(`event ${event} is not played`);
  return sounded.duration;
}

/** What a whole bow holds: the level's longest stroke, at the slow practice tempo, in whole notes, near enough. */
export function wholeBow(tune: Tune, settings: BowingSettings, level: Level): Fraction {
  const notes = notesInSeconds(slowTempo(tune, settings), settings.limits[level].longestStroke);
  return fraction(Math.round(notes * 960), 960);
}
