/** Median milliseconds of one call, over `runs` runs after a warm-up. */
export function medianTime(work: () => unknown, runs = 15): number {
  for (let i = 0; i < 20; i++) work();
  const times = Array.from({ length: runs }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  }).sort((a, b) => a - b);
  return times[Math.floor(runs / 2)] ?? 0;
}

export const ms = (time: number): string => `${time < 10 ? time.toFixed(2) : time.toFixed(0)} ms`;
