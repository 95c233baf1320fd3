import type { DrillSource } from './drill-source.ts';

/** Bars played one after another, the first time that they are played so. */
export interface PlayedStretch {
  /** Written bars. */
  readonly bars: readonly number[];
  /** Sounded notes that begin in them: first (included) to end (not included). */
  readonly from: number;
  readonly end: number;
  /** Which time its first bar is being played, from 1: more where an ending comes only then. */
  readonly pass: number;
}

/**
 * Every stretch of so many full bars of one part, written and played in a row, with at least one
 * note in it. Pickups are left out, and so is what a repeat sign joins.
 */
export function playedStretches(
  { tune, performance }: DrillSource,
  length: number,
  parts: ReadonlySet<number>,
): PlayedStretch[] {
  const found = new Map<string, PlayedStretch>();
  for (let i = 0; i + length <= performance.bars.length; i++) {
    const played = performance.bars.slice(i, i + length);
    const bars = played.map(p => tune.bars[p.bar]);
    const inRow = played.every(
      (p, k) =>
        bars[k]?.pickup === false &&
        bars[k]?.part === bars[0]?.part &&
        (k === 0 || p.bar > (played[k - 1]?.bar ?? -1)),
    );
    const [first, last] = [played[0], played.at(-1)];
    if (!inRow || !first || !last || first.first === last.end) continue;
    if (!parts.has(bars[0]?.part ?? -1)) continue;
    const indices = played.map(p => p.bar);
    const key = indices.join();
    if (!found.has(key)) {
      found.set(key, { bars: indices, from: first.first, end: last.end, pass: first.pass });
    }
  }
  return [...found.values()];
}

/** A stroke begins with its first note and another just after its last. */
export const isWholeStrokes = (
  { bowing }: DrillSource,
  { from, end }: Pick<PlayedStretch, 'from' | 'end'>,
): boolean => {
  const { strokeOf } = bowing.plan;
  return strokeOf[from] !== strokeOf[from - 1] && strokeOf[end] !== strokeOf[end - 1];
};
