/**
 * Which finger stops a pitch on a string, in first position.
 *
 * The rule is Leopold Mozart's (Violinschule, Augsburg 1756, pp. 66-68): the letter steps above the
 * open string are the finger, whatever the sign before the note. On the E string every F is the
 * first finger, every G the second, flat, natural or sharp. The hand shows in the semitones: the
 * first finger lies 1 (low), 2 or 3 above the open string, and so on.
 *
 * A letter does not always know. D sharp on the D string has no step above the open D, and high C
 * on the E string has five; in a retuned fiddle the letters may crowd or spread. Then the finger is
 * the one whose usual place is there: by semitones 0, 1, 1, 2, 2, 3, 3, 4, 4 (common practice; at 4
 * and at 6 semitones players differ). Nothing past 8 semitones is first position,
 * and 8 is the fourth finger stretched.
 *
 * `fingerOf(F#4, D4)`: F is two steps above D, so finger 2, four semitones up: "high 2".
 */
import { diatonic, type Pitch } from '../music/pitch.ts';
import { at } from '../must.ts';

/** The furthest that first position reaches above an open string, in semitones. */
export const reach = 8;

/** The semitones above the open string at which a finger can lie; Mozart's chart. */
const places: readonly (readonly number[])[] = [[0], [1, 2, 3], [2, 3, 4, 5], [4, 5, 6], [6, 7, 8]];

/** The usual finger by semitones above the open string. */
const usual: readonly number[] = [0, 1, 1, 2, 2, 3, 3, 4, 4];

/** Whether `finger` can lie `semitones` above the open string. */
export const lies = (finger: number, semitones: number): boolean =>
  places[finger]?.includes(semitones) ?? false;

/** Finger 0 to 4 for a pitch on the string tuned to `open`; null where first position ends. */
export function fingerOf(p: Pitch, open: Pitch): number | null {
  const semitones = p.midi - open.midi;
  if (semitones < 0 || semitones > reach) return null;
  const byLetter = diatonic(p) - diatonic(open);
  return lies(byLetter, semitones) ? byLetter : at(usual, semitones);
}
