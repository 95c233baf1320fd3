import type { Tune } from './tune.ts';

/** How many notes are written in the bars of each name. */
export function notesByBar({ bars, events }: Tune): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { name, first, end } of bars) {
    let count = counts.get(name) ?? 0;
    for (let e = first; e < end; e++) if (events[e]?.kind === 'note') count++;
    counts.set(name, count);
  }
  return counts;
}
