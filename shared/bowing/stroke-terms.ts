import type { Direction } from './bowing.ts';
import { type Cost, type LeadInModel, noCost, turned } from './lead-in-model.ts';

/** Number of passes that begin on the model's first stroke (`straight`), and on the opposite one (`turned`). */
export interface Passes {
  readonly straight: number;
  readonly turned: number;
}

const oncePlayed: Passes = { straight: 1, turned: 0 };

/** Prefix sums over the junctions or notes of a model: entry n is the sum over the first n. */
export interface RunningSums {
  readonly changes: readonly number[];
  readonly rough: readonly number[];
  readonly strong: readonly number[];
  readonly beats: readonly number[];
  readonly time: readonly number[];
}

/** Computes the prefix sums of a model. */
export function runningSums(form: LeadInModel): RunningSums {
  const time = [0];
  for (const length of form.lengths) time.push((time[time.length - 1] as number) + length);
  return {
    changes: runningCount(form.written),
    rough: runningSum(form.rough),
    strong: runningCount(form.strong),
    beats: runningCount(form.onBeat),
    time,
  };
}

/** Limits and costs of single strokes of a model. */
export interface StrokeTerms {
  /** Returns the last note that a stroke from note i may hold. Linear in the longest slur. */
  readonly lastFrom: (i: number) => number;
  /** Returns the cost of the stroke i..j and of the change after it, in constant time. Strong beats count in every pass. */
  readonly cost: (i: number, j: number, direction: Direction) => Cost;
}

/** Makes the terms of a model. `sums` can be given where they are known, to save time. */
export function strokeTerms(
  form: LeadInModel,
  passes: Passes = oncePlayed,
  sums: RunningSums = runningSums(form),
): StrokeTerms {
  const n = form.notes;
  const { changes, rough, strong, beats, time } = sums;

  const lastFrom = (i: number): number => {
    let j = i;
    while (
      j + 1 < n &&
      j + 2 - i <= form.longestSlur &&
      form.slurrable[j] &&
      between(time, i, j + 2) <= form.longestStroke
    ) {
      j++;
    }
    return j;
  };
  const cost = (i: number, j: number, direction: Direction): Cost => {
    const timesOff = form.strongBeat === direction ? passes.turned : passes.straight;
    const slurred = j > i;
    return [
      between(changes, i, j) + (j < n - 1 && !form.written[j] ? 1 : 0),
      between(rough, i, j),
      form.strongBeat === null ? 0 : between(strong, i, j + 1) * timesOff,
      form.intoBeat && slurred && between(beats, i + 1, j + 1) === 0 ? 1 : 0,
      (j - i + 1) ** 2,
    ];
  };
  return { lastFrom, cost };
}

/** Prefix sums of booleans. */
const runningCount = (truths: readonly boolean[]): readonly number[] =>
  runningSum(truths.map(Number));

function runningSum(terms: readonly number[]): readonly number[] {
  const sums = [0];
  let sum = 0;
  for (const term of terms) {
    sum += term;
    sums.push(sum);
  }
  return sums;
}

const between = (sums: readonly number[], from: number, end: number): number =>
  (sums[end] as number) - (sums[from] as number);

/** Computes the cost of a whole bowing, within the limits or not. */
export function bowingCost(
  form: LeadInModel,
  bowing: readonly boolean[],
  terms: StrokeTerms = strokeTerms(form),
): Cost {
  if (form.notes === 0) return noCost;
  const sum: [number, number, number, number, number] = [0, 0, 0, 0, 0];
  let from = 0;
  let direction = form.start;
  for (let j = 0; j <= bowing.length; j++) {
    if (j < bowing.length && !bowing[j]) continue;
    const own = terms.cost(from, j, direction);
    for (let t = 0; t < 5; t++) sum[t] = (sum[t] as number) + (own[t] as number);
    from = j + 1;
    direction = turned(direction);
  }
  return sum;
}
