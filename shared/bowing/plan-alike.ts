import { at } from '../must.ts';
import {
  addCost,
  type Cost,
  compareCost,
  type LeadInModel,
  noCost,
  strokeDirection,
} from './lead-in-model.ts';
import { bestShared, type RankedBowing } from './plan-lead-in.ts';

/**
 * Plans in which identical phrases are bowed identically.
 *
 * The lead-in is cut at the edges of its identical phrases, which stay changes of stroke. All
 * occurrences of a phrase form a class and share one bowing; each stretch between is a class of its
 * own. Once the parity (odd or even number of strokes) of every class is fixed, so is the stroke on
 * which each occurrence starts, and each class can be solved by itself, its costs summed over its
 * occurrences. So: run through the parities that add up to the wanted arrival, solve each class once
 * for each parity and pattern of starts, and merge the ranked lists by sum.
 *
 * `a b a` from down to arrive up: b must be odd, since the two a's together turn the bow an even
 * number of times. With a even, both start down; with a odd, the second starts on the stroke b
 * leaves, and so on.
 */

/** Stretches of the lead-in that are the same phrase: first note (included) to end (not included). */
export type AlikeSpans = readonly (readonly [number, number])[];

export interface AlikePlans {
  readonly ranked: readonly RankedBowing[];
  /** Classes of identical phrases that the plans keep alike. */
  readonly alike: number;
  /** Classes that the plans do not keep alike. */
  readonly untied: number;
  /** Keeping more of them alike was not tried, since it cuts the lead-in into too many classes. */
  readonly capped: boolean;
}

/** Most classes of stretches, free ones among them, whose parities are run through: 2^10 patterns. */
const mostClasses = 10;

/**
 * The k best bowings that arrive and keep as many of the classes alike as any that were tried. A set
 * of classes that cuts the lead-in into more than `mostClasses` is passed over, and `capped` says so.
 */
export function planAlike(
  form: LeadInModel,
  classes: readonly AlikeSpans[],
  k: number,
): AlikePlans {
  let capped = false;
  for (let untied = 0; untied <= classes.length; untied++) {
    const sets = subsets(classes, classes.length - untied);
    const tried = sets.filter(
      tied => tied.length === 0 || segmentsOf(form, tied).classes <= mostClasses,
    );
    const found = tried.flatMap(tied => bestTied(form, tied, k));
    if (found.length > 0 || untied === classes.length) {
      const ranked = firstDistinct(form, found, k);
      return { ranked, alike: classes.length - untied, untied, capped };
    }
    capped ||= tried.length < sets.length;
  }
  throw new Error('no subset of classes was tried');
}

interface Segment {
  readonly from: number;
  readonly end: number;
  readonly of: number;
}

/** The lead-in cut at the edges of its classes; classes are numbered as they first appear. */
function segmentsOf(
  form: LeadInModel,
  tied: readonly AlikeSpans[],
): { segments: Segment[]; classes: number } {
  const spans = tied
    .flatMap((spansOf, c) => spansOf.map(([from, end]) => ({ from, end, c })))
    .sort((a, b) => a.from - b.from);
  const segments: Segment[] = [];
  const numbers = new Map<number, number>();
  let classes = 0;
  let at = 0;
  const free = (end: number): void => {
    if (end > at) segments.push({ from: at, end, of: classes++ });
  };
  for (const { from, end, c } of spans) {
    free(from);
    const of = numbers.get(c) ?? classes++;
    numbers.set(c, of);
    segments.push({ from, end, of });
    at = end;
  }
  free(form.notes);
  return { segments, classes };
}

function bestTied(form: LeadInModel, tied: readonly AlikeSpans[], k: number): RankedBowing[] {
  const { segments, classes } = segmentsOf(form, tied);
  const places = Array.from({ length: classes }, (_, c) =>
    segments.flatMap((s, i) => (s.of === c ? [i] : [])),
  );
  const solved = places.map(() => new Map<number, RankedBowing[]>());
  const flips = form.start === form.arrive ? 0 : 1;
  const starts = segments.map(() => 0);
  let found: RankedBowing[] = [];
  for (let parities = 0; parities < 2 ** classes; parities++) {
    let turns = 0;
    segments.forEach((s, i) => {
      starts[i] = turns;
      turns ^= (parities >> s.of) & 1;
    });
    if (turns !== flips) continue;
    const lists: RankedBowing[][] = [];
    let least = noCost;
    for (let c = 0; c < classes; c++) {
      const odd = (parities >> c) & 1;
      const own = at(places, c);
      const key = own.reduce((bits, i) => bits * 2 + at(starts, i), 2 + odd);
      let list = at(solved, c).get(key);
      if (!list) {
        list = bestShared(
          own.map(i => stretch(form, at(segments, i), at(starts, i), odd)),
          k,
        );
        at(solved, c).set(key, list);
      }
      const best = list[0];
      if (!best) break;
      lists.push(list);
      least = addCost(least, best.cost);
    }
    const worst = found[k - 1];
    // Nothing here can be among the k best: spare the merging.
    if (lists.length < classes || (worst && compareCost(least, worst.cost) > 0)) continue;
    const more = mergeSums(form, segments, lists, k).map(({ choice, cost }) => ({
      bowing: joinSegments(form, segments, choice),
      cost,
    }));
    found = firstDistinct(form, [...found, ...more], k);
  }
  return found;
}

/** The part of a form that holds notes from..end, its edges being changes. */
function stretch(
  form: LeadInModel,
  { from, end }: Segment,
  turn: number,
  odd: number,
): LeadInModel {
  const start = strokeDirection(form.start, turn);
  return {
    ...form,
    notes: end - from,
    start,
    arrive: strokeDirection(start, odd),
    written: form.written.slice(from, end - 1),
    slurrable: form.slurrable.slice(from, end - 1),
    lengths: form.lengths.slice(from, end),
    strong: form.strong.slice(from, end),
    onBeat: form.onBeat.slice(from, end),
    rough: form.rough.slice(from, end - 1),
  };
}

interface Merged {
  readonly choice: readonly RankedBowing[];
  readonly cost: Cost;
}

/** The k cheapest choices of one bowing a class; ties by x ⊕ x⁰ in the order of first appearance. */
function mergeSums(
  form: LeadInModel,
  segments: readonly Segment[],
  lists: readonly (readonly RankedBowing[])[],
  k: number,
): Merged[] {
  const firstOf = lists.map((_, c) => segments.find(s => s.of === c)?.from ?? 0);
  let merged: Merged[] = [{ choice: [], cost: noCost }];
  for (let c = lists.length - 1; c >= 0; c--) {
    merged = at(lists, c)
      .flatMap(own =>
        merged.map(m => ({ choice: [own, ...m.choice], cost: addCost(own.cost, m.cost) })),
      )
      .sort(
        (a, b) =>
          compareCost(a.cost, b.cost) || likeWritten(form, firstOf.slice(c), a.choice, b.choice),
      )
      .slice(0, k);
  }
  return merged;
}

function likeWritten(
  form: LeadInModel,
  from: readonly number[],
  a: readonly RankedBowing[],
  b: readonly RankedBowing[],
): number {
  for (let c = 0; c < a.length; c++) {
    const d = compareUnlike(at(a, c).bowing, at(b, c).bowing, form.written, at(from, c));
    if (d !== 0) return d;
  }
  return 0;
}

/** Compares x ⊕ x⁰ of two bowings from the left, 0 first. */
function compareUnlike(
  a: readonly boolean[],
  b: readonly boolean[],
  written: readonly boolean[],
  from = 0,
): number {
  const j = a.findIndex((x, i) => x !== b[i]);
  if (j < 0) return 0;
  return a[j] === written[from + j] ? -1 : 1;
}

function joinSegments(
  form: LeadInModel,
  segments: readonly Segment[],
  choice: readonly RankedBowing[],
): boolean[] {
  const bowing = Array.from({ length: Math.max(0, form.notes - 1) }, () => true);
  for (const s of segments) {
    at(choice, s.of).bowing.forEach((x, j) => {
      bowing[s.from + j] = x;
    });
  }
  return bowing;
}

/** The k best of a list that may hold a bowing twice. */
function firstDistinct(
  form: LeadInModel,
  found: readonly RankedBowing[],
  k: number,
): RankedBowing[] {
  const sorted = [...found].sort(
    (a, b) => compareCost(a.cost, b.cost) || compareUnlike(a.bowing, b.bowing, form.written),
  );
  return sorted
    .filter((r, i) => i === 0 || r.bowing.some((x, j) => x !== sorted[i - 1]?.bowing[j]))
    .slice(0, k);
}

/** All ways to choose `size` of the items, in order. */
function subsets<T>(items: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, i) =>
    subsets(items.slice(i + 1), size - 1).map(rest => [item, ...rest]),
  );
}
