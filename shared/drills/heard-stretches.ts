import type { Fraction } from '../music/fraction.ts';
import type { Drill } from './drill.ts';
import { type DrillSource, firstSounded } from './drill-source.ts';

/** A stretch to be heard: sounded notes first to end (not included), its times, what is silent. */
export interface HeardStretch {
  readonly first: number;
  readonly end: number;
  readonly from: Fraction;
  readonly to: Fraction;
  /** Sounded notes that are left out: they keep their time, and nothing sounds. */
  readonly silent: readonly number[];
}

/**
 * What of a drill can be heard, one stretch after another; empty where hearing would not help, or
 * would give the answer away. A gap is silent.
 */
export function heardStretches(source: DrillSource, drill: Drill): readonly HeardStretch[] {
  const { phrases } = source.map;
  switch (drill.kind) {
    case 'call':
    case 'count':
      return stretchOf(source, drill.bars);
    case 'gaps':
      return stretchOf(source, drill.bars, drill.gaps);
    case 'same':
      return [drill.earlier, drill.later].flatMap(i => stretchOf(source, phrases[i]?.bars ?? []));
    case 'forks':
      return stretchOf(source, phrases[drill.after]?.bars ?? []);
    case 'into':
    case 'arrive':
    case 'start':
      return [];
  }
}

/** The first time that the bars are played one after another; none where they never are. */
function stretchOf(
  source: DrillSource,
  bars: readonly number[],
  gaps: readonly number[] = [],
): HeardStretch[] {
  const { performance } = source;
  const at = performance.bars.findIndex((_, i) =>
    bars.every((b, k) => performance.bars[i + k]?.bar === b),
  );
  const [first, last] = [performance.bars[at], performance.bars[at + bars.length - 1]];
  if (!first || !last || bars.length === 0) return [];
  const to = performance.bars[at + bars.length]?.onset ?? performance.length;
  const sounded = firstSounded(source);
  const inStretch = (event: number): number =>
    performance.notes.findIndex((n, k) => k >= first.first && k < last.end && n.event === event);
  const silent = gaps
    .filter(e => sounded.has(e))
    .map(inStretch)
    .filter(k => k >= 0);
  return [{ first: first.first, end: last.end, from: first.onset, to, silent }];
}
