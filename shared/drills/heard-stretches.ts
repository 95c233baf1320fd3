import type { Fraction } from '../music/fraction.ts';
import { at } from '../must.ts';
import type { Drill } from './drill.ts';
import type { DrillSource } from './drill-source.ts';

/** A stretch to be heard: sounded notes `first` to `end` (not included), from when to when, in whole notes. */
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
      return [drill.earlier, drill.later].flatMap(i => stretchOf(source, at(phrases, i).bars));
    case 'forks':
      return stretchOf(source, at(phrases, drill.after).bars);
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
  const start = performance.bars.findIndex((_, i) =>
    bars.every((b, k) => performance.bars[i + k]?.bar === b),
  );
  if (start < 0) return [];
  const [first, last] = [
    at(performance.bars, start),
    at(performance.bars, start + bars.length - 1),
  ];
  const to = performance.bars[start + bars.length]?.onset ?? performance.length;
  const inStretch = (event: number): number =>
    performance.notes.findIndex((n, k) => k >= first.first && k < last.end && n.event === event);
  const silent = gaps
    .filter(e => source.firstSounded.has(e))
    .map(inStretch)
    .filter(k => k >= 0);
  return [{ first: first.first, end: last.end, from: first.onset, to, silent }];
}
