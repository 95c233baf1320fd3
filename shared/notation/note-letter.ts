import { type NoteNames, noteSymbol } from '../music/note-names.ts';
import type { Pitch } from '../music/pitch.ts';
import type { Key } from '../music/tune.ts';
import { at } from '../must.ts';

/** Signs of alterations from -2 to 2. */
const signs = ['𝄫', '♭', '♮', '♯', '𝄪'];

/**
 * The letter of a note, octaves told apart as in ABC 2.1: `G,` on the G string, `G` on the D string,
 * `g` on the E string, `c'` above that; `H` or `Sol` where the book calls it so. A sign is added only
 * where the key does not say it.
 */
export function noteLetter(pitch: Pitch, key: Key, names: NoteNames): string {
  const { letter, octave, alter } = pitch;
  const { symbol, sign: signed, said } = noteSymbol(pitch, names);
  const sign = said || alter === key.alters[letter] ? '' : at(signs, signed + 2);
  const low = octave < 4 ? ','.repeat(4 - octave) : '';
  const high = octave > 5 ? '’'.repeat(octave - 5) : '';
  return `${octave >= 5 ? symbol.toLowerCase() : symbol}${sign}${low}${high}`;
}
