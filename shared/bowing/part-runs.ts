import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/** One pass through a part: sounded notes from `from` (included) to `end` (not included). */
export interface PartRun {
  readonly part: number;
  readonly from: number;
  readonly end: number;
  /** First sounded note of its first full bar, where the strokes of passes are compared. */
  readonly firstFull: number;
}

type Growing<T> = { -readonly [K in keyof T]: T[K] };

/** Lists the passes through all parts, in playing order. */
export function runsInOrder(tune: Tune, performance: Performance): PartRun[] {
  const runs: Growing<PartRun>[] = [];
  let firstFull: number | null = null;
  performance.bars.forEach((played, i) => {
    const bar = at(tune.bars, played.bar);
    const before = performance.bars[i - 1];
    const { part } = bar;
    const anew = !before || tune.bars[before.bar]?.part !== part || played.bar <= before.bar;
    if (anew) {
      runs.push({ part, from: played.first, end: played.end, firstFull: played.first });
      firstFull = null;
    }
    const run = runs.at(-1);
    if (!run) return;
    if (firstFull === null && !bar.pickup && played.end > played.first) {
      firstFull = played.first;
      run.firstFull = firstFull;
    }
    run.end = played.end;
  });
  return runs.filter(run => run.end > run.from);
}

/** Groups passes by part. */
export function partRuns(runs: readonly PartRun[]): ReadonlyMap<number, readonly PartRun[]> {
  const byPart = new Map<number, PartRun[]>();
  for (const run of runs) byPart.set(run.part, [...(byPart.get(run.part) ?? []), run]);
  return byPart;
}
