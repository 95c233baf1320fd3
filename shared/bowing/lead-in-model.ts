import { at } from '../must.ts';
import type { Direction } from './bowing.ts';

/**
 * What the bowing of a lead-in depends on: n sounded notes and the n - 1 junctions between neighbours.
 * Junction j is between notes j and j + 1. A bowing is a list of n - 1 booleans, true where the stroke
 * changes. The stroke also changes at both ends.
 */
export interface LeadInModel {
  readonly notes: number;
  readonly start: Direction;
  /** Stroke that the note after the last must have. */
  readonly arrive: Direction;
  /** The teacher's own bowing. */
  readonly written: readonly boolean[];
  /** For each junction: whether a slur may cover it. */
  readonly slurrable: readonly boolean[];
  /** Lengths of the notes, in any small unit. */
  readonly lengths: readonly number[];
  /** Longest slur in notes, and longest stroke in the unit of `lengths`; a single note is always allowed. */
  readonly longestSlur: number;
  readonly longestStroke: number;
  /** For each note: whether it is on a strong beat; on any beat. */
  readonly strong: readonly boolean[];
  readonly onBeat: readonly boolean[];
  /** For each junction: how badly a slur over it suits the way; 0 for a step on one string inside the beat. */
  readonly rough: readonly number[];
  /** Stroke preferred on strong beats; null for either. */
  readonly strongBeat: Direction | null;
  /** Whether slurs should lead into beats. */
  readonly intoBeat: boolean;
}

/**
 * The cost of a bowing, by which bowings are ranked: integers, compared from the left. In order: junctions
 * that differ from the teacher's, sum of `rough` over slurred junctions, strong beats not on the preferred
 * stroke, slurs that do not lead into a beat, sum of the squares of stroke lengths in notes.
 */
export type Cost = readonly [number, number, number, number, number];

/** Zero in every term. */
export const noCost: Cost = [0, 0, 0, 0, 0];

/** Adds two costs, term by term. */
export const addCost = (a: Cost, b: Cost): Cost => [
  a[0] + b[0],
  a[1] + b[1],
  a[2] + b[2],
  a[3] + b[3],
  a[4] + b[4],
];

/** Compares two costs from the left; negative where `a` is lower. */
export function compareCost(a: Cost, b: Cost): number {
  for (let t = 0; t < 5; t++) {
    const d = at(a, t) - at(b, t);
    if (d !== 0) return d;
  }
  return 0;
}

/** Counts the strokes of a bowing. */
export function strokeCount(bowing: readonly boolean[]): number {
  let count = 1;
  for (const changes of bowing) if (changes) count++;
  return count;
}

/** Lists the strokes of a bowing as first and last note, both included. */
export function strokesOf(bowing: readonly boolean[]): [number, number][] {
  const strokes: [number, number][] = [];
  let from = 0;
  for (let j = 0; j <= bowing.length; j++) {
    if (j === bowing.length || bowing[j]) {
      strokes.push([from, j]);
      from = j + 1;
    }
  }
  return strokes;
}

/** Returns the direction of stroke s, counted from 0, where strokes alternate. */
export const strokeDirection = (start: Direction, s: number): Direction =>
  (s % 2 === 0) === (start === 'down') ? 'down' : 'up';

/** Returns the opposite stroke. */
export const turned = (d: Direction): Direction => (d === 'down' ? 'up' : 'down');
