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
 * The lead-in is cut at the edges of its identical phrases, where the stroke always changes. All occurrences of
 * a phrase form a class and share one bowing; each stretch between them is a class by itself. The parities (odd
 * or even number of strokes) of all classes determine the first stroke of each occurrence, so that each class
 * can be solved separately, its cost summed over its occurrences. Therefore: try all parities that arrive on
 * the wanted stroke, solve each class once for each parity and pattern of first strokes, and merge the ranked
 * lists by their sums.
 *
 * Example: `a b a` from down, arriving up. The number of strokes in b must be odd, since the two a's have an
 * even number together. If a is even, both start down; if odd, the second starts on the stroke after b.
 */

/** Occurrences of one phrase in the lead-in: first note (included) and end (not included). */
export type AlikeSpans = readonly (readonly [number, number])[];

/** Ranked bowings, and how many phrases they bow alike. */
export interface AlikePlans {
  readonly ranked: readonly RankedBowing[];
  /** Number of classes of identical phrases that are bowed alike. */
  readonly alike: number;
  /** Number of classes that are not. */
  readonly untied: number;
  /** Whether some sets of more classes were not tried, since the lead-in would have over `mostClasses`. */
  readonly capped: boolean;
}

/** Most classes, those of stretches between phrases included, whose parities are all tried: 2^10 patterns. */
const mostClasses = 10;

/**
 * Finds the k best bowings that reach the anchor on its stroke and bow as many classes alike as possible. A set of
 * classes that cuts the lead-in into over `mostClasses` is not tried; `capped` says so.
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

/** Cuts the lead-in at the edges of its classes. Classes are numbered in order of first occurrence. */
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
    // None of these can be among the k best.
    if (lists.length < classes || (worst && compareCost(least, worst.cost) > 0)) continue;
    const more = mergeSums(form, segments, lists, k).map(({ choice, cost }) => ({
      bowing: joinSegments(form, segments, choice),
      cost,
    }));
    found = firstDistinct(form, [...found, ...more], k);
  }
  return found;
}

/** The model of one segment of a lead-in; `turn` and `odd` determine its first and its arriving stroke. */
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

/** The k cheapest choices of one bowing for each class; ties by x ⊕ x⁰, classes in order of first occurrence. */
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

/** The k best of a list, without duplicates. */
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
