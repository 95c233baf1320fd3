import { at } from '../must.ts';
import type { Direction } from './bowing.ts';

/**
 * A lead-in reduced to what its bowing depends on: n sounded notes and the n - 1 junctions between
 * neighbours. Junction j lies between notes j and j + 1. A bowing is a list of n - 1 booleans, true
 * where the stroke changes. Both ends are changes.
 */
export interface LeadInModel {
  readonly notes: number;
  readonly start: Direction;
  /** The stroke of the note after the last one. */
  readonly arrive: Direction;
  /** The teacher's own bowing. */
  readonly written: readonly boolean[];
  /** A slur may cover the junction. */
  readonly slurrable: readonly boolean[];
  /** Lengths of the notes in a whole number of any small unit. */
  readonly lengths: readonly number[];
  /** Longest slur, in notes, and in the unit of `lengths`; a single note is always allowed. */
  readonly longestSlur: number;
  readonly longestStroke: number;
  /** Notes on strong beats; on any beat. */
  readonly strong: readonly boolean[];
  readonly onBeat: readonly boolean[];
  /** How little a slur over the junction suits the way: 0 for a step on one string inside the beat. */
  readonly rough: readonly number[];
  /** The stroke wanted on strong beats; null for either. */
  readonly strongBeat: Direction | null;
  /** Slurs are wanted to lead into beats. */
  readonly intoBeat: boolean;
}

/**
 * The rank of a bowing: integers compared from the left, smaller first. In order: junctions unlike
 * the teacher's, rough slurred junctions, strong beats off the wanted stroke, slurs that do not lead
 * into a beat, stroke lengths squared (in notes).
 */
export type Cost = readonly [number, number, number, number, number];

/** The cost of nothing. */
export const noCost: Cost = [0, 0, 0, 0, 0];

/** Sum of two costs, term by term. */
export const addCost = (a: Cost, b: Cost): Cost => [
  a[0] + b[0],
  a[1] + b[1],
  a[2] + b[2],
  a[3] + b[3],
  a[4] + b[4],
];

/** Negative where `a` costs less: terms are compared from the left. */
export function compareCost(a: Cost, b: Cost): number {
  for (let t = 0; t < 5; t++) {
    const d = at(a, t) - at(b, t);
    if (d !== 0) return d;
  }
  return 0;
}

/** How many strokes a bowing has. */
export function strokeCount(bowing: readonly boolean[]): number {
  let count = 1;
  for (const changes of bowing) if (changes) count++;
  return count;
}

/** Strokes of a bowing as first and last note. */
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

/** Direction of stroke s, counted from 0. */
export const strokeDirection = (start: Direction, s: number): Direction =>
  (s % 2 === 0) === (start === 'down') ? 'down' : 'up';

/** The other stroke. */
export const turned = (d: Direction): Direction => (d === 'down' ? 'up' : 'down');
