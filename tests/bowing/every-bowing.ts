import type { Direction } from '../../shared/bowing/bowing.ts';
import type { LeadInModel } from '../../shared/bowing/lead-in-model.ts';

/**
 * The brute-force enumerator that the engine is held to: every bowing of a short lead-in, one by
 * one, judged by what `docs/architecture.md` says of it and sharing no code with the engine.
 */
export interface Enumerated {
  readonly groupings: bigint;
  readonly arriving: bigint;
  readonly allowed: bigint;
  readonly allowedArriving: bigint;
  readonly ranked: readonly {
    readonly bowing: readonly boolean[];
    readonly cost: readonly number[];
  }[];
}

export function everyBowing(
  form: LeadInModel,
  accepts: (bowing: readonly boolean[]) => boolean = () => true,
): Enumerated {
  let [groupings, arriving, allowed, allowedArriving] = [0n, 0n, 0n, 0n];
  const ranked: { bowing: boolean[]; cost: number[]; unlike: string }[] = [];
  const n = form.notes;
  for (let bits = 0; bits < 2 ** (n - 1); bits++) {
    const bowing = Array.from({ length: n - 1 }, (_, j) => ((bits >> j) & 1) === 1);
    const strokes = groups(bowing, n);
    const directions: Direction[] = strokes.map((_, s) =>
      s % 2 === 0 ? form.start : form.start === 'down' ? 'up' : 'down',
    );
    const next = strokes.length % 2 === 0 ? form.start : form.start === 'down' ? 'up' : 'down';
    const arrives = next === form.arrive;
    const fine = strokes.every(notes => isAllowed(form, notes)) && accepts(bowing);
    groupings++;
    if (arrives) arriving++;
    if (fine) allowed++;
    if (arrives && fine) {
      allowedArriving++;
      ranked.push({
        bowing,
        cost: rankOf(form, bowing, strokes, directions),
        unlike: bowing.map((x, j) => (x === form.written[j] ? '0' : '1')).join(''),
      });
    }
  }
  ranked.sort((a, b) => byNumbers(a.cost, b.cost) || (a.unlike < b.unlike ? -1 : 1));
  return {
    groupings,
    arriving,
    allowed,
    allowedArriving,
    ranked: ranked.map(({ bowing, cost }) => ({ bowing, cost })),
  };
}

function groups(bowing: readonly boolean[], n: number): number[][] {
  const found: number[][] = [[0]];
  for (let i = 1; i < n; i++) {
    if (bowing[i - 1]) found.push([i]);
    else found.at(-1)?.push(i);
  }
  return found;
}

function isAllowed(form: LeadInModel, notes: readonly number[]): boolean {
  if (notes.length === 1) return true;
  const time = notes.reduce((sum, i) => sum + (form.lengths[i] ?? 0), 0);
  const smooth = notes.slice(1).every(i => form.slurrable[i - 1]);
  return notes.length <= form.longestSlur && time <= form.longestStroke && smooth;
}

function rankOf(
  form: LeadInModel,
  bowing: readonly boolean[],
  strokes: readonly (readonly number[])[],
  directions: readonly Direction[],
): number[] {
  const count = (items: readonly boolean[]): number => items.filter(Boolean).length;
  const unlike = count(bowing.map((x, j) => x !== form.written[j]));
  const off = strokes.flatMap((notes, s) =>
    notes.map(
      i => form.strong[i] === true && form.strongBeat !== null && directions[s] !== form.strongBeat,
    ),
  );
  const rough = bowing.reduce((sum, x, j) => sum + (x ? 0 : (form.rough[j] ?? 0)), 0);
  const notInto = strokes.map(
    notes => form.intoBeat && notes.length > 1 && !notes.slice(1).some(i => form.onBeat[i]),
  );
  const squares = strokes.reduce((sum, notes) => sum + notes.length * notes.length, 0);
  return [unlike, rough, count(off), count(notInto), squares];
}

function byNumbers(a: readonly number[], b: readonly number[]): number {
  const t = a.findIndex((x, i) => x !== b[i]);
  return t < 0 ? 0 : (a[t] ?? 0) - (b[t] ?? 0);
}
