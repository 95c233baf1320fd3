import type { Direction } from './bowing.ts';
import { addCost, type Cost, type LeadInModel, noCost, turned } from './lead-in-model.ts';
import { type StrokeTerms, strokeTerms } from './stroke-terms.ts';

/**
 * All bowings of a lead-in, counted exactly, and the best of those that arrive.
 *
 * Counting. With changes wherever one likes, n notes have 2^(n-1) groupings, and for n > 1 half of
 * them arrive, since the last junction turns the arrival round. Within limits, let C[j][p] be the
 * number of ways to play the first j notes in strokes whose number is p mod 2; the last stroke holds
 * notes i..j: C[j][p] = Σᵢ allowed(i, j) · C[i - 1][1 - p].
 *
 * Ranking. Work from the last note to the first. `best(i, direction)` holds the k best ways to play
 * notes i..n-1 beginning with a stroke in that direction and arriving as asked. A way is a first
 * stroke i..j and a way of playing the rest, which is already ranked. The rank is a sum over strokes,
 * and addition keeps its order, so nothing outside the k best of the rest can be among the k best of
 * the whole. Ties go to x ⊕ x⁰, compared from the left, 0 first: of two ways with one first stroke
 * the rest decides, and of two with first strokes ending at j < j′ junction j does, where one changes
 * and the other does not: the one that does as the teacher does comes first.
 *
 * Three separate notes from down, to arrive up: `D U D` has three strokes and arrives; so does no
 * other with a change unlike the teacher's, for one slur makes two strokes. Slurring all three makes one
 * stroke and arrives too, two junctions away. So the order is: as written, then the slur of three.
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

/** Counts of all groupings and of those that arrive, without limits and within them. */
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

/** A way to play the notes from some note on: its first stroke ends at `last`. */
interface Way {
  readonly cost: Cost;
  readonly last: number;
  readonly rest: Way | null;
}

/** The k best allowed bowings that arrive, best first. */
export const bestBowings = (
  form: LeadInModel,
  k: number,
  terms: StrokeTerms = strokeTerms(form),
): RankedBowing[] => bestBy(form, k, terms);

/**
 * The k best bowings that several stretches of equally many notes can share, all of them arriving.
 * Costs are summed over the stretches; ties are broken by the first one's written bowing.
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

/** The k best bowings of a form that arrive, under any costs of strokes. */
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
 * The k best ways to play the notes from i on: for each end of the first stroke, the ranked ways of
 * playing what comes `after` it, sorted in until one is past the kth.
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

/** A way whose first stroke ends at `last` ranks before another: its costs are `own` and `rest`. */
function comesBefore(form: LeadInModel, own: Cost, rest: Cost, last: number, other: Way): boolean {
  for (let t = 0; t < other.cost.length; t++) {
    const d = (own[t] as number) + (rest[t] as number) - (other.cost[t] as number);
    if (d !== 0) return d < 0;
  }
  return last !== other.last && endsAsWritten(form, last, other.last);
}

/** Of two first strokes ending at different notes: the one that ends at `a` is more like x⁰. */
const endsAsWritten = (form: LeadInModel, a: number, b: number): boolean =>
  a < b ? form.written[a] === true : form.written[b] !== true;

function bowingOf(way: Way, n: number): boolean[] {
  const bowing = new Array<boolean>(n - 1).fill(false);
  for (let w: Way | null = way; w !== null; w = w.rest) if (w.last < n - 1) bowing[w.last] = true;
  return bowing;
}
