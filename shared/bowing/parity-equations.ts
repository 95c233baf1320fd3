import { at } from '../must.ts';

/**
 * An equation over the field of two elements: a list of unknown parities and their sum mod 2;
 * `p0 + p2 = 1` is `{ of: [0, 2], sum: 1 }`.
 *
 * Sets of equations are solved by Gaussian elimination on integers, one bit for each unknown. Each row keeps
 * the set of equations that it is the sum of, so that a contradiction (0 = 1) names its causes.
 */
export interface ParityEquation {
  /** Numbers of unknowns, from 0; one that occurs twice cancels. */
  readonly of: readonly number[];
  readonly sum: number;
}

/** All solutions of a set of equations, or the equations that contradict each other. */
export type ParitySolution =
  | {
      readonly kind: 'solved';
      /** One solution, and a basis of the vectors that can be added to it. */
      readonly one: readonly number[];
      readonly free: readonly (readonly number[])[];
    }
  | {
      readonly kind: 'contradiction';
      /** Indices of equations without a common solution: a smallest such set, within the limit of `mostSubsets`. */
      readonly equations: readonly number[];
    };

interface Row {
  bits: bigint;
  sum: number;
  from: bigint;
}

/** Solves equations in `unknowns` parities. Cubic in their number; finding a smallest contradiction tries up to 20,000 sets. */
export function solveParities(
  unknowns: number,
  equations: readonly ParityEquation[],
): ParitySolution {
  const { pivots, clash } = eliminate(equations);
  if (clash !== null) return { kind: 'contradiction', equations: smallestClash(equations, clash) };
  const one = Array.from({ length: unknowns }, () => 0);
  for (const [column, row] of pivots) one[column] = row.sum;
  const free: number[][] = [];
  for (let u = 0; u < unknowns; u++) {
    if (pivots.has(u)) continue;
    const vector = Array.from({ length: unknowns }, () => 0);
    vector[u] = 1;
    for (const [column, row] of pivots) if ((row.bits >> BigInt(u)) & 1n) vector[column] = 1;
    free.push(vector);
  }
  return { kind: 'solved', one, free };
}

/** Reduces equations to rows by pivot; `clash`: bits of equations that add up to 0 = 1, null where none do. */
function eliminate(equations: readonly ParityEquation[]): {
  pivots: Map<number, Row>;
  clash: bigint | null;
} {
  const pivots = new Map<number, Row>();
  for (const [index, equation] of equations.entries()) {
    const row: Row = { bits: 0n, sum: equation.sum & 1, from: 1n << BigInt(index) };
    for (const u of equation.of) row.bits ^= 1n << BigInt(u);
    for (const [column, pivot] of pivots) {
      if ((row.bits >> BigInt(column)) & 1n) addRow(row, pivot);
    }
    if (row.bits === 0n) {
      if (row.sum === 1) return { pivots, clash: row.from };
      continue;
    }
    const column = lowestBit(row.bits);
    for (const pivot of pivots.values()) {
      if ((pivot.bits >> BigInt(column)) & 1n) addRow(pivot, row);
    }
    pivots.set(column, row);
  }
  return { pivots, clash: null };
}

function addRow(row: Row, other: Row): void {
  row.bits ^= other.bits;
  row.sum ^= other.sum;
  row.from ^= other.from;
}

function lowestBit(bits: bigint): number {
  let column = 0;
  while (((bits >> BigInt(column)) & 1n) === 0n) column++;
  return column;
}

/** Most sets of equations that are tried in search of a smaller contradiction. */
const mostSubsets = 20_000;

/**
 * A smallest set of contradicting equations. Elimination finds some set, but another may be smaller: sets of
 * growing size are tried, up to `mostSubsets`.
 */
function smallestClash(equations: readonly ParityEquation[], met: bigint): number[] {
  const all = equations.map((_, i) => i);
  const found = all.filter(i => (met >> BigInt(i)) & 1n);
  let tried = 0;
  for (let size = 1; size < found.length; size++) {
    for (const set of choose(all, size)) {
      if (++tried > mostSubsets) return found;
      if (eliminate(set.map(i => at(equations, i))).clash !== null) return set;
    }
  }
  return found;
}

function* choose(items: readonly number[], size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= items.length - size; i++) {
    for (const rest of choose(items, size - 1, i + 1)) yield [at(items, i), ...rest];
  }
}
