import type { Pitch } from '../../shared/music/pitch.ts';
import type { Key } from '../../shared/music/tune.ts';

const names: Readonly<Record<number, string>> = {
  [-2]: 'flat-flat',
  [-1]: 'flat',
  0: 'natural',
  1: 'sharp',
  2: 'double-sharp',
};

/** The accidental each pitch of a bar needs on the page, told by the pitches in written order. */
export type AccidentalTeller = (pitch: Pitch, tiedOn: boolean) => string | null;

/**
 * Tells, for the pitches of one bar in order, which sign stands before each: one where the pitch
 * is not what the signature, or a sign before it in the bar at the same height, makes it. A note
 * tied on over the bar line has none (common practice).
 */
export function tellAccidentals(key: Key): AccidentalTeller {
  const inForce = new Map<string, number>();
  return (pitch, tiedOn) => {
    const height = `${pitch.letter}${pitch.octave}`;
    const now = inForce.get(height) ?? key.alters[pitch.letter];
    if (now === pitch.alter || tiedOn) return null;
    inForce.set(height, pitch.alter);
    return names[pitch.alter] ?? null;
  };
}
