import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
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
 * Finds every stretch of so many full bars of one part, written and played in a row, with at least one
 * note in it. Pickups are left out, and so is what a repeat sign joins.
 */
export function playedStretches(
  { tune, performance }: DrillSource,
  length: number,
  parts: ReadonlySet<number>,
): PlayedStretch[] {
  const found = new Map<string, PlayedStretch>();
  for (let i = 0; i + length <= performance.bars.length; i++) {
    const [first, last] = [at(performance.bars, i), at(performance.bars, i + length - 1)];
    if (first.first === last.end || !parts.has(at(tune.bars, first.bar).part)) continue;
    const indices = barsInRow(tune, performance, i, length);
    if (!indices) continue;
    const key = indices.join();
    if (!found.has(key)) {
      found.set(key, { bars: indices, from: first.first, end: last.end, pass: first.pass });
    }
  }
  return [...found.values()];
}

/** So many full bars of one part from a played bar on, as written bars; null where they are not in a row. */
function barsInRow(
  tune: Tune,
  performance: Performance,
  from: number,
  length: number,
): readonly number[] | null {
  const indices = performance.bars.slice(from, from + length).map(played => played.bar);
  const bars = indices.map(i => at(tune.bars, i));
  const { part } = at(bars, 0);
  if (bars.some(bar => bar.pickup || bar.part !== part)) return null;
  const rises = indices.slice(1).every((index, i) => index > at(indices, i));
  return rises ? indices : null;
}

/** Whether a stroke begins with the first note of a stretch, and another just after its last. */
export const isWholeStrokes = (
  { bowing }: DrillSource,
  { from, end }: Pick<PlayedStretch, 'from' | 'end'>,
): boolean => {
  const { strokeOf } = bowing.plan;
  return strokeOf[from] !== strokeOf[from - 1] && strokeOf[end] !== strokeOf[end - 1];
};
