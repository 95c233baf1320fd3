import { at } from '../must.ts';
import type { Letter } from './pitch.ts';
import type { Key } from './tune.ts';

/** Letters in the order in which sharps are added to a signature; flats go backwards. */
const sharpOrder: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** How far each mode's signature lies from that of the major key on the same tonic. */
const modeShift: Readonly<Record<Key['mode'], number>> = {
  lydian: 1,
  major: 0,
  mixolydian: -1,
  dorian: -2,
  minor: -3,
  phrygian: -4,
  locrian: -5,
  none: 0,
};

/**
 * Sharps of the signature of a key, flats below zero: D major 2, E dorian 2, F minor -4.
 * The tonic is a letter, with `#` or `b` after it or not (ABC 2.1, section 3.1.14); throws otherwise.
 */
export function fifthsOf(tonic: string, mode: Key['mode']): number {
  if (mode === 'none') return 0;
  const place = sharpOrder.indexOf(tonic.charAt(0).toUpperCase() as Letter);
  if (place < 0) throw new RangeError(`no tonic: ${tonic}`);
  const sign = tonic[1] === '#' ? 7 : tonic[1] === 'b' ? -7 : 0;
  // F, which stands first in the order, is one flat from C.
  return place - 1 + sign + modeShift[mode];
}

/** Semitones by which a signature alters each letter; past seven sharps or flats, some by two. */
export function signatureOf(fifths: number): Record<Letter, number> {
  const alters: Record<Letter, number> = { C: 0, D: 0, E: 0, F: 0, G: 0, A: 0, B: 0 };
  const order = fifths < 0 ? [...sharpOrder].reverse() : sharpOrder;
  for (let i = 0; i < Math.abs(fifths); i++) {
    alters[at(order, i % 7)] += Math.sign(fifths);
  }
  return alters;
}

/** The key of a tune that states none, and of `K:none`. */
export const noKey: Key = { tonic: 'C', mode: 'none', fifths: 0, alters: signatureOf(0) };
