import type { BarRange } from '../../shared/music/bar-range.ts';
import type { Tune } from '../../shared/music/tune.ts';

/** First and last event of the bars of a passage, both included; null where it names none. */
export function eventsOfRange(
  tune: Tune,
  range: BarRange,
): { readonly first: number; readonly last: number } | null {
  const from = tune.bars.find(b => b.name === range.from.bar);
  const to = tune.bars.find(b => b.name === range.to.bar);
  return from && to && to.end > from.first ? { first: from.first, last: to.end - 1 } : null;
}
