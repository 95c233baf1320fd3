import { at } from '../must.ts';
import type { Tune } from './tune.ts';

/** Number of notes written in the bars of each name; a name may be borne by several bars. */
export function notesByBar({ bars, events }: Tune): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { name, first, end } of bars) {
    let count = counts.get(name) ?? 0;
    for (let e = first; e < end; e++) if (at(events, e).kind === 'note') count++;
    counts.set(name, count);
  }
  return counts;
}
