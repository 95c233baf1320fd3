import { type Letter, type Pitch, parsePitch, pitch, pitchName } from '../music/pitch.ts';
import { at } from '../must.ts';
import type { Tuning } from './fingering.ts';

/** A fiddle as it comes: E5 A4 D4 G3, string 1 highest. */
export const fiddleTuning: Tuning = [
  pitch('E', 0, 5),
  pitch('A', 0, 4),
  pitch('D', 0, 4),
  pitch('G', 0, 3),
];

/**
 * Reads a tuning as fiddlers say it, from the lowest string up: `GDAE`, `AEAE`, `AEAC#`; each
 * letter is the pitch of that name nearest to the string as it usually is, since strings are let
 * down or pulled up by a tone or two and no more. An array gives the pitches outright, from string
 * 1 down: `['E5', 'A4', 'C#4', 'G3']`. null when it is neither, or when a string would not be
 * lower than the one before it.
 */
export function parseTuning(text: string | readonly string[]): Tuning | null {
  const strings = typeof text === 'string' ? lettersToStrings(text) : text.map(parsePitch);
  const [first, second, third, fourth, ...more] = strings;
  if (!first || !second || !third || !fourth || more.length > 0) return null;
  const falling = first.midi > second.midi && second.midi > third.midi && third.midi > fourth.midi;
  return falling ? [first, second, third, fourth] : null;
}

/** Numbers of the strings, from 1, whose pitch is not that of a fiddle as it comes. */
export const retuned = (tuning: Tuning): readonly number[] =>
  tuning.flatMap((p, i) => (p.midi === at(fiddleTuning, i).midi ? [] : [i + 1]));

/** The strings that letters name, from string 1 down; empty where they are not four letters. */
function lettersToStrings(text: string): Pitch[] {
  const names = text.replace(/[\s-]/g, '').match(/[A-Ga-g][#b]?/g) ?? [];
  if (names.join('').length !== text.replace(/[\s-]/g, '').length) return [];
  if (names.length !== fiddleTuning.length) return [];
  return names.reverse().map((name, i) => nearestPitch(name, at(fiddleTuning, i)));
}

/** The pitch of a letter within a tritone of the usual string. */
function nearestPitch(name: string, usual: Pitch): Pitch {
  const letter = name.charAt(0).toUpperCase() as Letter;
  const alter = { '#': 1, b: -1 }[name.charAt(1)] ?? 0;
  const near = [-1, 0, 1].map(step => pitch(letter, alter, usual.octave + step));
  const away = (p: Pitch): number => Math.abs(p.midi - usual.midi);
  return near.reduce((best, p) => (away(p) < away(best) ? p : best));
}

/** `A`, `C#`, `Eb`: a pitch without its octave. */
const _pitchLetter = (p: Pitch): string => pitchName(p).replace(/-?\d+$/, '');
