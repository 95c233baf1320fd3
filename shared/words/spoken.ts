import type { Stop, Tuning } from '../fingering/fingering.ts';
import { germanName, type NoteNames, syllableOf } from '../music/note-names.ts';
import type { Letter, Pitch } from '../music/pitch.ts';
import type { Direction } from '../music/tune.ts';
import { at } from '../must.ts';

/** Names of notes, strings and fingers, and of strokes where a tune is said aloud. */
export interface SpokenPhrases {
  /** Added to a letter or a syllable, from a double flat to a double sharp. */
  readonly signs: readonly [string, string, string, string, string];
  /** Where strings share a note: put before its name. */
  readonly strings: Readonly<Record<'high' | 'middle' | 'low', string>>;
  readonly finger: (finger: number, height: Height | null) => string;
  readonly openFinger: string;
  readonly stop: (finger: string, string: string) => string;
  readonly openString: (string: string) => string;
  readonly outOfPosition: string;
  /** On a retuned string: the note that the finger would give on a fiddle as it comes. */
  readonly asIf: (note: string) => string;
  /** Between the notes of a double stop. */
  readonly and: string;
  /** Between notes with their places. */
  readonly together: string;
  readonly rest: string;
  readonly held: (note: string) => string;
  readonly notPlayed: string;
  /** A stroke at its start, one begun in the bar before, and one after a lift. */
  readonly stroke: Readonly<Record<Direction, { begins: string; still: string; again: string }>>;
  /** A sentence: the strokes are not the same each time. */
  readonly turned: string;
}

/** What a language must have for notes to be named in it. */
export interface SpokenLanguage {
  readonly spoken: SpokenPhrases;
}

/** A finger drawn back or pushed forward from its usual place. */
export type Height = 'very-low' | 'low' | 'high' | 'very-high';

/** "F sharp", "B flat", "C"; "Fis", "B"; "fa sharp". Double signs are spoken as such. */
export function spokenPitch(
  { spoken }: SpokenLanguage,
  p: Pick<Pitch, 'letter' | 'alter'>,
  names: NoteNames,
): string {
  if (names === 'german') return germanName(p);
  return (
    (names === 'solfege' ? syllableOf(p.letter) : p.letter) + (spoken.signs[p.alter + 2] ?? '')
  );
}

/** The name of a natural note. */
export const spokenLetter = (language: SpokenLanguage, letter: Letter, names: NoteNames): string =>
  spokenPitch(language, { letter, alter: 0 }, names);

/** "D and A": the notes of a double stop. */
export const spokenPitches = (
  language: SpokenLanguage,
  pitches: readonly Pitch[],
  names: NoteNames,
): string => pitches.map(p => spokenPitch(language, p, names)).join(language.spoken.and);

/**
 * Names of the strings from string 1 (the highest): "E", "A", "D", "G". Where two strings have the
 * same note they are told apart: AEAE has "high E", "high A", "low E", "low A"; a third is "middle".
 */
export function stringNames(
  language: SpokenLanguage,
  tuning: Tuning,
  names: NoteNames,
): readonly string[] {
  const notes = tuning.map(p => spokenPitch(language, p, names));
  return notes.map((note, i) => {
    const [first, last] = [notes.indexOf(note), notes.lastIndexOf(note)];
    if (first === last) return note;
    const place = i === first ? 'high' : i === last ? 'low' : 'middle';
    return language.spoken.strings[place] + note;
  });
}

/** By finger, then semitones above the open string; null in its usual place (common practice). */
const heights: readonly Readonly<Record<number, Height | null>>[] = [
  {},
  { 1: 'low', 2: null, 3: 'high' },
  { 2: 'very-low', 3: 'low', 4: 'high', 5: 'very-high' },
  { 4: 'low', 5: null, 6: 'high' },
  { 6: 'low', 7: null, 8: 'high' },
];

/** "high 2", "3", "open". */
export const spokenFinger = ({ spoken }: SpokenLanguage, { finger, semitones }: Stop): string =>
  finger === 0 ? spoken.openFinger : spoken.finger(finger, heights[finger]?.[semitones] ?? null);

/** "high 2 on D", "open A"; a pitch without a stop is "out of first position". */
export const spokenStop = (
  language: SpokenLanguage,
  stop: Stop | null,
  tuning: Tuning,
  names: NoteNames,
): string => stopOn(language, stop, stringNames(language, tuning, names));

/** The same where the names of the strings are at hand. */
export function stopOn(
  language: SpokenLanguage,
  stop: Stop | null,
  strings: readonly string[],
): string {
  const { spoken } = language;
  if (!stop) return spoken.outOfPosition;
  const string = at(strings, stop.string - 1);
  return stop.finger === 0
    ? spoken.openString(string)
    : spoken.stop(spokenFinger(language, stop), string);
}

/** "open D and open A": the stops of a double stop. */
export const spokenStops = (
  language: SpokenLanguage,
  stops: readonly (Stop | null)[],
  tuning: Tuning,
  names: NoteNames,
): string => stops.map(stop => spokenStop(language, stop, tuning, names)).join(language.spoken.and);
