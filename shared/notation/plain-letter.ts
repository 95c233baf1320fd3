import { germanName, type NoteNames, noteSymbol } from '../music/note-names.ts';
import type { Pitch } from '../music/pitch.ts';
import { at } from '../must.ts';

/** Signs of alterations from -2 to 2. */
const signs = ['♭♭', '♭', '', '♯', '♯♯'];

/**
 * The letter of a note with its sign, "F♯", "Fis", "Fa♯", for those who play without notation: no key signature stands
 * before it, and its string and finger tell the octave.
 */
export function plainLetter(pitch: Pick<Pitch, 'letter' | 'alter'>, names: NoteNames): string {
  if (names === 'german') return germanName(pitch);
  const { symbol, sign } = noteSymbol(pitch, names);
  return symbol + at(signs, sign + 2);
}
