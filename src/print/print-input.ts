import type { Direction } from '../../shared/music/tune.ts';
import type { PrintKind, SheetStep } from '../../shared/print-kinds.ts';
import type { Study } from '../../shared/study.ts';
import type { Score } from '../engrave/score.ts';
import type { Book, NotesBlock, TuneBlock } from '../read/book.ts';
import type { Audience, Paper } from './sizes.ts';

/** A tune as the print needs it. */
export interface PrintTune {
  readonly block: TuneBlock;
  /** null where the ABC could not be read. */
  readonly study: Study | null;
  readonly score: Score | null;
  /** Rights are known. Otherwise the tune is only named, even in a private copy, since prints get passed on. */
  readonly published: boolean;
  readonly credits: string;
}

/** Everything that a print is made from. The print calls no other stage itself. */
export interface PrintInput {
  readonly book: Book;
  /** By id, in the order of the book. */
  readonly tunes: ReadonlyMap<string, PrintTune>;
  /** Draws a tune again, each cell as near to `cellWidth` (in drawing units) as its notes allow. */
  readonly draw: (study: Study, cellWidth: number) => Score;
  readonly noteChain: (block: NotesBlock) => readonly PrintedNote[] | null;
  /** A picture of the book by its path; null where it is missing. */
  readonly picture: (path: string) => Buffer | null;
}

/** A note of a `:notes[…]` chain in words. `spoken` is its finger and string, null where no finger reaches it. */
export interface PrintedNote {
  readonly letter: string;
  readonly spoken: string | null;
  readonly direction: Direction;
  readonly slurred: boolean;
}

/** How many strokes a print shows: at every note, at phrase starts, changes and anchors, or in anchors only. */
export const densities = ['all', 'starts', 'anchors'] as const;
/** One of `densities`. */
export type Density = (typeof densities)[number];

/** What to print, and how. */
export interface PrintOptions {
  readonly what: PrintKind;
  readonly paper: Paper;
  readonly audience: Audience;
  /** Fading steps of the sheets of each tune, in order; a book has only the first of them. */
  readonly steps: readonly SheetStep[];
  readonly marks: Density;
  /** Whether fingers are printed; null, as for `letters`, for the default of the audience. */
  readonly fingers: boolean | null;
  readonly letters: boolean | null;
  /** Order of a book: lessons with their tunes, or tunes by title. */
  readonly order: 'lessons' | 'tunes';
  /** Id of the only tune to print; null for all. */
  readonly only: string | null;
}
