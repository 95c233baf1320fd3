import type { Stop, Tuning } from '../../fingering/fingering.ts';
import { germanName, type NoteNames, syllableOf } from '../../music/note-names.ts';
import type { Pitch } from '../../music/pitch.ts';
import type { Direction } from '../../music/tune.ts';
import type { Study } from '../../study.ts';
import { keptByTuning, nameStrings } from '../name-strings.ts';
import { type Speech, type SpokenPart, sayNote, sayTune } from '../say-tune.ts';

/**
 * A tune said aloud, for those who do not read notation and for screen readers: note, string,
 * finger and stroke.
 */

/** "F sharp", "B flat", "C"; "Fis", "B"; "fa sharp". Double signs are spoken as such. */
export const spokenPitch = (p: Pick<Pitch, 'letter' | 'alter'>, names: NoteNames): string => {
  if (names === 'german') return germanName(p);
  return (names === 'solfege' ? syllableOf(p.letter) : p.letter) + (signs[p.alter + 2] ?? '');
};

/** From a double flat up. */
const signs = [' double flat', ' flat', '', ' sharp', ' double sharp'] as const;

/** "D and A": the notes of a double stop. */
export const spokenPitches = (pitches: readonly Pitch[], names: NoteNames): string =>
  pitches.map(p => spokenPitch(p, names)).join(' and ');

/** Names of the strings from string 1 (the highest): "E", "A", "D", "G"; "high E", "low E". */
export const stringNames = keptByTuning((tuning, names) =>
  nameStrings(tuning, p => spokenPitch(p, names), {
    high: 'high ',
    middle: 'middle ',
    low: 'low ',
  }),
);

/** By finger, then semitones above the open string (common practice). */
const fingerNames: readonly Readonly<Record<number, string>>[] = [
  { 0: 'open' },
  { 1: 'low 1', 2: '1', 3: 'high 1' },
  { 2: 'very low 2', 3: 'low 2', 4: 'high 2', 5: 'very high 2' },
  { 4: 'low 3', 5: '3', 6: 'high 3' },
  { 6: 'low 4', 7: '4', 8: 'high 4' },
];

/** "high 2", "3", "open". */
export const spokenFinger = (stop: Stop): string =>
  fingerNames[stop.finger]?.[stop.semitones] ?? `${stop.finger}`;

/** "high 2 on D", "open A"; a pitch without a stop is "out of first position". */
export function spokenStop(stop: Stop | null, tuning: Tuning, names: NoteNames): string {
  if (!stop) return 'out of first position';
  const string = stringNames(tuning, names)[stop.string - 1] ?? `string ${stop.string}`;
  return stop.finger === 0 ? `open ${string}` : `${spokenFinger(stop)} on ${string}`;
}

/** "open D and open A": the stops of a double stop. */
export const spokenStops = (
  stops: readonly (Stop | null)[],
  tuning: Tuning,
  names: NoteNames,
): string => stops.map(stop => spokenStop(stop, tuning, names)).join(' and ');

/** "F sharp, high 2 on D, down"; see `sayNote`. */
export const spokenNote = (
  stop: Stop | null,
  pitch: Pitch,
  direction: Direction | null,
  tuning: Tuning,
  names: NoteNames,
): string => sayNote(speeches[names], stop, pitch, direction, tuning);

/** The whole tune in words, part by part and bar by bar as written. */
export const speakTune = (study: Study, names: NoteNames): readonly SpokenPart[] =>
  sayTune(study, speeches[names]);

const speechWith = (names: NoteNames): Speech => ({
  pitch: p => spokenPitch(p, names),
  stop: (stop, tuning) => spokenStop(stop, tuning, names),
  finger: spokenFinger,
  strings: tuning => stringNames(tuning, names),
  asIf: p => `as if ${spokenPitch(p, names)}`,
  and: ' and ',
  together: ' together with ',
  rest: 'Rest',
  held: note => `${note}, held`,
  notPlayed: 'Not played',
  stroke: {
    down: { begins: 'Down', still: 'Still down', again: 'Down again' },
    up: { begins: 'Up', still: 'Still up', again: 'Up again' },
  },
  turned: 'Another time through, the strokes are turned round.',
});

const speeches: Readonly<Record<NoteNames, Speech>> = {
  letters: speechWith('letters'),
  german: speechWith('german'),
  solfege: speechWith('solfege'),
};
