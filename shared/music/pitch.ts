import { at } from '../must.ts';
export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

export const letters: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];

const semitones: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

const steps: Readonly<Record<Letter, number>> = { C: 0, D: 1, E: 2, F: 3, G: 4, A: 5, B: 6 };

/** A spelled pitch. Octaves as in scientific pitch notation: middle C is C4, MIDI 60. */
export interface Pitch {
  readonly letter: Letter;
  /** Semitones up from the plain letter: -2 to 2. */
  readonly alter: number;
  readonly octave: number;
  /** MIDI note number. */
  readonly midi: number;
}

/** The pitch of a letter, altered by so many semitones, in an octave. */
export function pitch(letter: Letter, alter: number, octave: number): Pitch {
  return { letter, alter, octave, midi: 12 * (octave + 1) + semitones[letter] + alter };
}

/** Staff steps above C0, counting letters: C4 is 28, D4 is 29. */
export const diatonic = (p: Pick<Pitch, 'letter' | 'octave'>): number =>
  p.octave * 7 + steps[p.letter];

/** ASCII signs of alterations from -2 to 2. */
const signs = ['bb', 'b', '', '#', '##'];

/** `F#4`, `Bb3`: the name in ASCII, for data and messages. Throws on alterations past a double one. */
export const pitchName = (p: Pitch): string => `${p.letter}${at(signs, p.alter + 2)}${p.octave}`;

/** Reads `F#4`, `Bb3`; null when it is not such a name. */
export function parsePitch(name: string): Pitch | null {
  const m = /^([A-Ga-g])(##|#|bb|b)?(-?\d)$/.exec(name);
  if (!m?.[1]) return null;
  const alter = signs.indexOf(m[2] ?? '') - 2;
  return pitch(m[1].toUpperCase() as Letter, alter, Number(m[3]));
}
