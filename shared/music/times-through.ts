import type { Performance } from './performance.ts';
import type { Tune } from './tune.ts';

/** How often a part is played in one time through the tune. */
export function timesThrough(tune: Tune, performance: Performance, part: number): number {
  const passes = performance.bars.filter(b => tune.bars[b.bar]?.part === part).map(b => b.pass);
  return Math.max(0, ...passes);
}
