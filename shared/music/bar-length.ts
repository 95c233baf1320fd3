import { add, compare, equal, type Fraction } from './fraction.ts';
import { meterLength } from './meter.ts';
import type { Meter } from './tune.ts';

/** A bar's metre, and what its notes and rests add up to, in whole notes. */
interface MeasuredBar {
  readonly meter: Meter;
  readonly length: Fraction;
}

/** Whether two bars together make one full bar in the metre of the first; never in free time. */
export function completes(a: MeasuredBar, b: Pick<MeasuredBar, 'length'>): boolean {
  const full = meterLength(a.meter);
  return full !== null && equal(add(a.length, b.length), full);
}

/** Whether a bar is shorter than its metre says. In free time no bar is. */
export function isShort(bar: MeasuredBar): boolean {
  const full = meterLength(bar.meter);
  return full !== null && compare(bar.length, full) < 0;
}
