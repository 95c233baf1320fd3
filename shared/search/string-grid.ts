import { fingerOf } from '../fingering/finger-of.ts';
import type { Stop, Tuning } from '../fingering/fingering.ts';
import { type Letter, type Pitch, pitch } from '../music/pitch.ts';
import { at, got } from '../must.ts';

/** A place that a finger can take on a string. */
export interface StringPlace extends Stop {
  readonly pitch: Pitch;
}

/** Sharps for the most part, as fiddle keys have them; B flat and E flat are met more often so. */
const spellings: readonly (readonly [Letter, number])[] = [
  ['C', 0],
  ['C', 1],
  ['D', 0],
  ['E', -1],
  ['E', 0],
  ['F', 0],
  ['F', 1],
  ['G', 0],
  ['G', 1],
  ['A', 0],
  ['B', -1],
  ['B', 0],
];

/** The strings from low to high, each with its open note and its places up to a fifth above it. */
export const stringGrid = (tuning: Tuning): readonly (readonly StringPlace[])[] =>
  tuning
    .map((open, i) =>
      Array.from({ length: 8 }, (_, semitones) => {
        const midi = open.midi + semitones;
        const [letter, alter] = at(spellings, midi % 12);
        const sounding = semitones === 0 ? open : pitch(letter, alter, Math.floor(midi / 12) - 1);
        const finger = got(fingerOf(sounding, open), 'finger within first position');
        return { pitch: sounding, string: i + 1, finger, semitones, stretched: false };
      }),
    )
    .toReversed();
