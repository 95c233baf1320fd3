import type { NoteNames } from '../../music/note-names.ts';
import type { Pitch } from '../../music/pitch.ts';
import * as told from '../spoken.ts';
import { spoken } from './spoken.ts';

const language = { spoken };
export const spokenPitch = (p: Pick<Pitch, 'letter' | 'alter'>, names: NoteNames): string =>
  told.spokenPitch(language, p, names);
export const spokenPitches = (p: readonly Pitch[], names: NoteNames): string =>
  told.spokenPitches(language, p, names);
