import type { BowingSettings } from '../../shared/bowing/settings.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import type { NoteNames } from '../../shared/music/note-names.ts';
import type { PrintKind, SheetStep } from '../../shared/print-kinds.ts';
import type { Rights } from '../../shared/rights.ts';

/** Settings of a book: those of `bowbook.yaml`, and defaults for the rest. */
export interface BookSettings {
  readonly title: string;
  readonly teacher: string | null;
  readonly about: string | null;
  /** BCP 47. */
  readonly language: string;
  readonly paper: 'a4' | 'letter';
  readonly tuning: Tuning;
  readonly bowing: BowingSettings;
  /** Rights of the tunes that state none themselves; null where they are unknown. */
  readonly rights: Rights | null;
  /** The book's word for a cut, the ornament. */
  readonly cutName: string;
  /** Address at which the site will stand, ending in `/`; null where the teacher has not said. */
  readonly site: string | null;
  /** Colours and picture of the book; null for the default look. */
  readonly theme: Theme | null;
  /** What the notes are called in words: B and B flat, H and B, or si and si flat. */
  readonly noteNames: NoteNames;
  /** What to make for paper, as PDF. */
  readonly print: readonly PrintKind[];
  /** Which of the five fading steps each tune's sheets are made in, from 1, everything, to 5, the title. */
  readonly steps: readonly SheetStep[];
}

/** Colours as `#rrggbb`, and a picture in `media`; null for what the teacher has not set. */
export interface Theme {
  readonly ink: string | null;
  readonly paper: string | null;
  readonly accent: string | null;
  readonly picture: string | null;
}
