import type { Stop, Tuning } from '../../fingering/fingering.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { Pitch } from '../../music/pitch.ts';
import { spokenNote as note } from '../say-tune.ts';
import * as told from '../spoken.ts';
import { spoken } from './spoken.ts';

const language = { spoken };
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
