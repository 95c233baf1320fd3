import type { Edit } from '../../bowing/bowing.ts';
import type { Stop, Tuning } from '../../fingering/fingering.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { Pitch } from '../../music/pitch.ts';
import type { Tune } from '../../music/tune.ts';
import type { Fork, Phrase, SectionMap } from '../../sections/section-map.ts';
import * as b from '../bowing.ts';
import * as m from '../map.ts';
import * as n from '../note-places.ts';
import { spokenNote as note } from '../say-tune.ts';
import * as told from '../spoken.ts';
import { edits } from './bowing.ts';
import { map } from './map.ts';
import { places } from './places.ts';
import { spoken } from './spoken.ts';

const language = { spoken, edits, map, places };
export const spokenPitch = (p: Pick<Pitch, 'letter' | 'alter'>, names: NoteNames): string =>
  told.spokenPitch(language, p, names);
export const spokenPitches = (p: readonly Pitch[], names: NoteNames): string =>
  told.spokenPitches(language, p, names);
export const stringNames = (tuning: Tuning, names: NoteNames): readonly string[] =>
  told.stringNames(language, tuning, names);
export const spokenFinger = (stop: Stop): string => told.spokenFinger(language, stop);
export const spokenNote = (
  stop: Stop | null,
  pitch: Pitch,
  tuning: Tuning,
  names: NoteNames,
): string => note(language, stop, pitch, tuning, names);
export const noteWords = (tune: Tune, e: number): string => n.noteWords(language, tune, e);
export const spanWords = (tune: Tune, e: readonly number[]): string =>
  n.spanWords(language, tune, e);
export const editSentence = (tune: Tune, e: Edit): string => b.editSentence(language, tune, e);
export const kinSentence = (tune: Tune, mp: SectionMap, p: Phrase, names: NoteNames): string =>
  m.kinSentence(language, tune, mp, p, names);
export const forkSentence = (mp: SectionMap, f: Fork): string => m.forkSentence(language, mp, f);
