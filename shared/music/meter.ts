import { compare, divide, type Fraction, fraction, multiply, toNumber } from './fraction.ts';
import type { Meter, TuneType } from './tune.ts';

/** The metre of ABC's `M:none`, and of a tune that states none. */
export const freeMeter: Meter = { beats: 4, unit: 4, sign: null, free: true };

/** Length of a full bar in whole notes; null where bars have no stated length. */
export const meterLength = (m: Meter): Fraction | null =>
  m.free ? null : fraction(m.beats, m.unit);

/**
 * The default note length where ABC has no `L:`: 1/16 when the metre is below 0.75, else 1/8
 * (ABC 2.1, section 3.1.7).
 */
export function defaultUnit(m: Meter): Fraction {
  const length = meterLength(m);
  return length && compare(length, fraction(3, 4)) < 0 ? fraction(1, 16) : fraction(1, 8);
}

/** Whether the beats of a metre are dotted, three of its lower figure each: 6/8, 9/8, 12/8 and 9/16. */
export const isCompound = (m: Meter): boolean =>
  !m.free && m.unit >= 8 && m.beats > 3 && m.beats % 3 === 0;

/**
 * The beat that a player feels, in whole notes: three of the lower figure in compound time, the
 * minim in cut time and in reels, hornpipes and 3/2, else the lower figure itself. Reels and
 * hornpipes are counted in minims however they are written (common practice).
 */
export function beatsOf(m: Meter, type: TuneType | null = null): Fraction {
  if (isCompound(m)) return fraction(3, m.unit);
  const inMinims = m.sign === 'cut' || type === 'reel' || type === 'hornpipe';
  if (inMinims && m.unit >= 4 && (m.beats * 2) % m.unit === 0) return fraction(1, 2);
  return fraction(1, m.unit);
}

/**
 * Onsets in a bar at which the strong beats fall, from 0, in whole notes: every beat of compound
 * time and of time counted in minims, beats 1 and 3 of four, 1 of two and of three (common
 * practice).
 */
export function strongBeats(m: Meter, type: TuneType | null = null): readonly Fraction[] {
  const length = meterLength(m);
  if (!length) return [fraction(0)];
  const beat = beatsOf(m, type);
  const count = Math.max(1, Math.floor(toNumber(divide(length, beat))));
  const step = isCompound(m) || compare(beat, fraction(1, 2)) === 0 ? 1 : count === 4 ? 2 : count;
  const onsets: Fraction[] = [];
  for (let i = 0; i < count; i += step) onsets.push(multiply(beat, fraction(i)));
  return onsets;
}

/** The metre as ABC writes it: `6/8`, `C`, `C|`, `none`. */
export function meterText(m: Meter): string {
  if (m.free) return 'none';
  if (m.sign) return m.sign === 'cut' ? 'C|' : 'C';
  return `${m.beats}/${m.unit}`;
}
