import type { Stop, Tuning } from '../../fingering/fingering.ts';
import { germanName, type NoteNames, syllableOf } from '../../music/note-names.ts';
import type { Pitch } from '../../music/pitch.ts';
import type { Direction } from '../../music/tune.ts';
import type { Study } from '../../study.ts';
import { keptByTuning, nameStrings } from '../name-strings.ts';
import { type Speech, type SpokenPart, sayNote, sayTune } from '../say-tune.ts';

/** „Fis“, „B“, „H“; by letters „F-Kreuz“, „B-Be“; by syllables „fa-Kreuz“. */
export const spokenPitch = (p: Pick<Pitch, 'letter' | 'alter'>, names: NoteNames): string => {
  if (names === 'german') return germanName(p);
  return (names === 'solfege' ? syllableOf(p.letter) : p.letter) + (signs[p.alter + 2] ?? '');
};

/** From a double flat up. */
const signs = ['-Doppel-Be', '-Be', '', '-Kreuz', '-Doppelkreuz'] as const;

/** „D und A“. */
export const spokenPitches = (pitches: readonly Pitch[], names: NoteNames): string =>
  pitches.map(p => spokenPitch(p, names)).join(' und ');

/** „E“, „A“, „D“, „G“; „Hoch-E“, „Tief-E“. */
export const stringNames = keptByTuning((tuning, names) =>
  nameStrings(tuning, p => spokenPitch(p, names), {
    high: 'Hoch-',
    middle: 'Mittel-',
    low: 'Tief-',
  }),
);

/** By finger, then semitones above the open string (common practice). */
const fingerNames: readonly Readonly<Record<number, string>>[] = [
  { 0: 'leer' },
  { 1: 'tiefer 1', 2: '1', 3: 'hoher 1' },
  { 2: 'sehr tiefer 2', 3: 'tiefer 2', 4: 'hoher 2', 5: 'sehr hoher 2' },
  { 4: 'tiefer 3', 5: '3', 6: 'hoher 3' },
  { 6: 'tiefer 4', 7: '4', 8: 'hoher 4' },
];

/** „hoher 2“, „3“, „leer“. */
export const spokenFinger = (stop: Stop): string =>
  fingerNames[stop.finger]?.[stop.semitones] ?? `${stop.finger}`;

/** „hoher 2 auf D“, „leere A-Saite“, „leere Tief-E-Saite“. */
export function spokenStop(stop: Stop | null, tuning: Tuning, names: NoteNames): string {
  if (!stop) return 'nicht in der ersten Lage';
  const string = stringNames(tuning, names)[stop.string - 1] ?? `Saite ${stop.string}`;
  return stop.finger === 0 ? `leere ${string}-Saite` : `${spokenFinger(stop)} auf ${string}`;
}

/** „leere D-Saite und leere A-Saite“. */
export const spokenStops = (
  stops: readonly (Stop | null)[],
  tuning: Tuning,
  names: NoteNames,
): string => stops.map(stop => spokenStop(stop, tuning, names)).join(' und ');

/** „Fis, hoher 2 auf D, Abstrich“. */
export const spokenNote = (
  stop: Stop | null,
  pitch: Pitch,
  direction: Direction | null,
  tuning: Tuning,
  names: NoteNames,
): string =>
  sayNote(
    speeches[names],
    stop,
    pitch,
    direction && (direction === 'down' ? 'Abstrich' : 'Aufstrich'),
    tuning,
  );

/** The whole tune in words, part by part and bar by bar as written. */
export const speakTune = (study: Study, names: NoteNames): readonly SpokenPart[] =>
  sayTune(study, speeches[names]);

const speechWith = (names: NoteNames): Speech => ({
  pitch: p => spokenPitch(p, names),
  stop: (stop, tuning) => spokenStop(stop, tuning, names),
  finger: spokenFinger,
  strings: tuning => stringNames(tuning, names),
  asIf: p => `gegriffen wie ${spokenPitch(p, names)}`,
  and: ' und ',
  together: ' zusammen mit ',
  rest: 'Pause',
  held: note => `${note}, gehalten`,
  notPlayed: 'Nicht gespielt',
  stroke: {
    down: { begins: 'Ab', still: 'Weiter im Abstrich', again: 'Noch einmal ab' },
    up: { begins: 'Auf', still: 'Weiter im Aufstrich', again: 'Noch einmal auf' },
  },
  turned: 'Beim anderen Durchgang sind die Striche umgekehrt.',
});

const speeches: Readonly<Record<NoteNames, Speech>> = {
  letters: speechWith('letters'),
  german: speechWith('german'),
  solfege: speechWith('solfege'),
};
