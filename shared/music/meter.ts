import { compare, divide, type Fraction, fraction, multiply, toNumber } from './fraction.ts';
import type { Meter, Tune, TuneType } from './tune.ts';

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

/** What says how a tune is counted, besides the metre of the bar: its type, metre and default length. */
export type Counted = Pick<Tune, 'type' | 'meter' | 'unit'>;

/** Types that are written in four crotchets: in 2/4 they stand in half their usual lengths. */
const ofFourCrotchets: readonly (TuneType | null)[] = ['reel', 'hornpipe', 'strathspey'];

/**
 * Whether a tune stands in 2/4 in half the lengths it would have in 4/4, its running notes semiquavers:
 * reels and hornpipes of old American books. A polka never does; any other type does where the default
 * length is a semiquaver (common practice). Such a tune is counted as it would be in 4/4, at half the
 * length: a reel by the crotchet.
 */
export function isHalved({ type, meter, unit }: Counted): boolean {
  if (meter.free || meter.beats !== 2 || meter.unit !== 4 || type === 'polka') return false;
  return ofFourCrotchets.includes(type) || compare(unit, fraction(1, 16)) <= 0;
}

/** The metre of a bar at twice its lengths, as `isHalved` needs it: 2/4 as 4/4. */
const doubled = (m: Meter): Meter => ({ ...m, beats: m.beats * 2 });

/** A tune that is counted by its type alone. */
const notHalved = ({ type }: Counted): Counted => ({
  type,
  meter: freeMeter,
  unit: fraction(1, 8),
});

const halfOf = (length: Fraction): Fraction => divide(length, fraction(2));

/**
 * The beat that a player feels in a bar of that metre, in whole notes: three of the lower figure in
 * compound time, the minim in cut time and in reels, hornpipes and 3/2, else the lower figure itself;
 * of a tune in 2/4 that `isHalved`, half of what it is in 4/4. Reels and hornpipes in 4/4 are counted in
 * minims however they are written (common practice).
 */
export function beatsOf(m: Meter, tune: Counted): Fraction {
  if (isCompound(m)) return fraction(3, m.unit);
  if (isHalved(tune)) return halfOf(beatsOf(doubled(m), notHalved(tune)));
  if (m.free) return fraction(1, 4);
  const inMinims = m.sign === 'cut' || tune.type === 'reel' || tune.type === 'hornpipe';
  if (inMinims && m.unit >= 4 && (m.beats * 2) % m.unit === 0) return fraction(1, 2);
  return fraction(1, m.unit);
}

/**
 * Onsets in a bar at which the strong beats fall, from 0, in whole notes: every beat of compound
 * time and of time counted in minims, beats 1 and 3 of four, 1 of two and of three (common
 * practice), and both crotchets of a polka in 2/4, whose first is the stronger, and whose drive off the
 * beat is the player's own; of a tune in 2/4 that `isHalved`, at half the place of those in 4/4.
 */
export function strongBeats(m: Meter, tune: Counted): readonly Fraction[] {
  const length = meterLength(m);
  if (!length) return [fraction(0)];
  if (isHalved(tune) && !isCompound(m)) {
    return strongBeats(doubled(m), notHalved(tune)).map(halfOf);
  }
  const beat = beatsOf(m, tune);
  const count = Math.max(1, Math.floor(toNumber(divide(length, beat))));
  const isPolka = tune.type === 'polka' && m.beats === 2 && m.unit === 4;
  const step =
    isPolka || isCompound(m) || compare(beat, fraction(1, 2)) === 0 ? 1 : count === 4 ? 2 : count;
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
