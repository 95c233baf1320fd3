import type { Direction } from './bowing.ts';
import { addCost, type Cost, type LeadInModel, noCost, turned } from './lead-in-model.ts';
import { type StrokeTerms, strokeTerms } from './stroke-terms.ts';

/**
 * Numbers of bowings of a lead-in: of all, and of those that reach the anchor on its stroke (arrive).
 *
 * Counting. Without limits, n notes have 2^(n-1) bowings; for n > 1 half of them arrive, since the last junction
 * reverses the arrival. With limits, let C[j][p] be the number of bowings of the first j notes whose number of
 * strokes is p mod 2. The last stroke holds notes i..j: C[j][p] = Σᵢ allowed(i, j) · C[i - 1][1 - p].
 *
 * Ranking. Dynamic programming from the last note to the first: `best(i, direction)` holds the k best bowings of
 * notes i..n-1 that begin with a stroke in that direction and arrive. Each is a first stroke i..j and one of the
 * ranked bowings of the rest. The cost is a sum over strokes, so no bowing outside the k best of the rest can be
 * among the k best of the whole. Ties are broken by x ⊕ x⁰, the junctions that differ from the written bowing,
 * compared from the left, 0 first: of two bowings with the same first stroke the rest decides; of two whose
 * first strokes end at j < j′, junction j does, at which only the first changes: the one that agrees with the
 * teacher ranks first.
 *
 * Example: three separate notes from down, arriving up. `D U D` has three strokes and arrives. One slur makes two
 * strokes, and does not. A slur of all three makes one stroke and arrives, with two junctions changed. So the
 * order is: as written, then the slur of three.
 */
export interface Counts {
  readonly groupings: bigint;
  readonly arriving: bigint;
  readonly allowed: bigint;
  readonly allowedArriving: bigint;
}

/** A bowing with its cost. */
export interface RankedBowing {
  /** true where the stroke changes, for each junction. */
  readonly bowing: readonly boolean[];
  readonly cost: Cost;
}

/** Counts all bowings and those that arrive, without limits and with them. */
export function countBowings(form: LeadInModel): Counts {
  const n = form.notes;
  const arrives = (strokes: number): boolean =>
    (strokes % 2 === 0) === (form.start === form.arrive);
  if (n === 0) {
    const one = arrives(0) ? 1n : 0n;
    return { groupings: 1n, arriving: one, allowed: 1n, allowedArriving: one };
  }
  const { lastFrom } = strokeTerms(form);
  const even = Array.from({ length: n + 1 }, () => 0n);
  const odd = Array.from({ length: n + 1 }, () => 0n);
  even[0] = 1n;
  for (let i = 0; i < n; i++) {
    const [e, o] = [even[i] as bigint, odd[i] as bigint];
    const last = lastFrom(i);
    for (let j = i; j <= last; j++) {
      even[j + 1] = (even[j + 1] as bigint) + o;
      odd[j + 1] = (odd[j + 1] as bigint) + e;
    }
  }
  const [ways, oddWays] = [even[n] as bigint, odd[n] as bigint];
  return {
    groupings: 1n << BigInt(n - 1),
    arriving: n === 1 ? (arrives(1) ? 1n : 0n) : 1n << BigInt(n - 2),
    allowed: ways + oddWays,
    allowedArriving: arrives(0) ? ways : oddWays,
  };
}

/** A bowing of the notes from some note on: its first stroke ends at `last`. */
interface Way {
  readonly cost: Cost;
  readonly last: number;
  readonly rest: Way | null;
}

/** Finds the k best bowings within the limits that arrive, best first. */
export const bestBowings = (
  form: LeadInModel,
  k: number,
  terms: StrokeTerms = strokeTerms(form),
): RankedBowing[] => bestBy(form, k, terms);

/**
 * Finds the k best bowings that several models with equally many notes can share, each arriving on its own
 * stroke. Costs are summed over the models; ties are broken by the written bowing of the first.
 */
export function bestShared(forms: readonly LeadInModel[], k: number): RankedBowing[] {
  const form = forms[0];
  if (!form) return [];
  if (forms.length === 1) return bestBowings(form, k);
  const terms = forms.map(f => ({ ...strokeTerms(f), alike: f.start === form.start }));
  return bestBy(form, k, {
    lastFrom: i => Math.min(...terms.map(t => t.lastFrom(i))),
    cost: (i, j, direction) =>
      terms.reduce<Cost>(
        (sum, t) => addCost(sum, t.cost(i, j, t.alike ? direction : turned(direction))),
        noCost,
      ),
  });
}

/** Finds the k best bowings of a model that arrive, under the given costs of strokes. */
export function bestBy(form: LeadInModel, k: number, terms: StrokeTerms): RankedBowing[] {
  const n = form.notes;
  if (n === 0) return form.start === form.arrive ? [{ bowing: [], cost: noCost }] : [];
  const end: Way = { cost: noCost, last: n, rest: null };
  const down = new Array<readonly Way[]>(n + 1).fill(noWays);
  const up = new Array<readonly Way[]>(n + 1).fill(noWays);
  (form.arrive === 'down' ? down : up)[n] = [end];
  for (let i = n - 1; i >= 0; i--) {
    down[i] = bestFrom(form, i, 'down', k, up, terms);
    up[i] = bestFrom(form, i, 'up', k, down, terms);
  }
  return ((form.start === 'down' ? down : up)[0] ?? []).map(way => ({
    bowing: bowingOf(way, n),
    cost: way.cost,
  }));
}

const noWays: readonly Way[] = [];

/**
 * The k best bowings of the notes from i: for each end of the first stroke, the ranked bowings `after` it are
 * inserted until one ranks below the kth.
 */
function bestFrom(
  form: LeadInModel,
  i: number,
  direction: Direction,
  k: number,
  after: readonly (readonly Way[])[],
  terms: StrokeTerms,
): Way[] {
  const ways = new Array<Way>(k);
  let count = 0;
  const end = terms.lastFrom(i);
  for (let last = i; last <= end; last++) {
    const list = after[last + 1] ?? noWays;
    if (list.length === 0) continue;
    const own = terms.cost(i, last, direction);
    for (const rest of list) {
      let at = count;
      while (at > 0 && comesBefore(form, own, rest.cost, last, ways[at - 1] as Way)) at--;
      if (at === k) break;
      if (count < k) count++;
      for (let rank = count - 1; rank > at; rank--) ways[rank] = ways[rank - 1] as Way;
      ways[at] = { cost: addCost(own, rest.cost), last, rest };
    }
  }
  if (count < k) ways.length = count;
  return ways;
}

/** Whether a bowing with costs `own` and `rest`, whose first stroke ends at `last`, ranks before another. */
function comesBefore(form: LeadInModel, own: Cost, rest: Cost, last: number, other: Way): boolean {
  for (let t = 0; t < other.cost.length; t++) {
    const d = (own[t] as number) + (rest[t] as number) - (other.cost[t] as number);
    if (d !== 0) return d < 0;
  }
  return last !== other.last && endsAsWritten(form, last, other.last);
}

/** Whether, of two first strokes that end at `a` and `b`, the first agrees better with the written bowing. */
const endsAsWritten = (form: LeadInModel, a: number, b: number): boolean =>
  a < b ? form.written[a] === true : form.written[b] !== true;

function bowingOf(way: Way, n: number): boolean[] {
  const bowing = new Array<boolean>(n - 1).fill(false);
  for (let w: Way | null = way; w !== null; w = w.rest) if (w.last < n - 1) bowing[w.last] = true;
  return bowing;
}
