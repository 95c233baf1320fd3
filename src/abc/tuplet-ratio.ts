import { type Fraction, fraction } from '../../shared/music/fraction.ts';
import { isCompound } from '../../shared/music/meter.ts';
import type { Meter } from '../../shared/music/tune.ts';
import type { RawElement } from './abcjs-parse.ts';

/**
 * The ratio that a tuplet multiplies lengths by. abcjs is right but for one case: 5, 7 or 9 notes, where `q`
 * is left out, take the time of 3 in compound metres (ABC 2.1, section 4.13), and it says 2.
 */
export function tupletRatio(raw: RawElement, abc: string, meter: Meter): Fraction {
  const p = raw.startTriplet ?? 1;
  const written = abc.slice(raw.startChar ?? 0, raw.endChar ?? 0);
  const stated = new RegExp(`\\(${p}:\\d`).test(written);
  const q =
    !stated && (p === 5 || p === 7 || p === 9) && isCompound(meter)
      ? 3
      : Math.round((raw.tripletMultiplier ?? 1) * p);
  return fraction(q, p);
}
