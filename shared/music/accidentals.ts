import { got } from '../must.ts';
import type { Pitch } from './pitch.ts';
import type { Key } from './tune.ts';

const names: Readonly<Record<number, string>> = {
  [-2]: 'flat-flat',
  [-1]: 'flat',
  0: 'natural',
  1: 'sharp',
  2: 'double-sharp',
};

/** Names the accidental to print before a pitch; null for none. Called for each in written order. */
export type AccidentalOf = (pitch: Pitch, tiedOn: boolean) => string | null;

/**
 * Starts a bar in a key. A pitch gets an accidental where it differs from the key signature, or from an
 * earlier accidental of the bar on the same letter and octave. A note tied over the bar line gets none
 * (common practice). The names are those of MusicXML.
 */
export function accidentalsInBar(key: Key): AccidentalOf {
  const inForce = new Map<string, number>();
  return (pitch, tiedOn) => {
    const height = `${pitch.letter}${pitch.octave}`;
    const now = inForce.get(height) ?? key.alters[pitch.letter];
    if (now === pitch.alter || tiedOn) return null;
    inForce.set(height, pitch.alter);
    return got(names[pitch.alter], `accidental of ${pitch.alter} semitones`);
  };
}
