import { at } from '../must.ts';
import type { Performance } from './performance.ts';
import type { Tune } from './tune.ts';

/** How often a part is played in one performance of the tune; 0 where it never is. */
export function timesThrough(tune: Tune, performance: Performance, part: number): number {
  const passes = performance.bars.filter(b => at(tune.bars, b.bar).part === part).map(b => b.pass);
  return Math.max(0, ...passes);
}
