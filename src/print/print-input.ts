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
  /** Rights are known. Paper travels: a tune whose rights are not known is named, and not printed. */
  readonly published: boolean;
  readonly credits: string;
}

/** What a print is made from. The build fills it in; no other stage is called from here. */
export interface PrintInput {
  readonly book: Book;
  /** By id, in the order of the book. */
  readonly tunes: ReadonlyMap<string, PrintTune>;
  /** A tune drawn again, every cell as near to this wide (in drawing units) as its notes allow. */
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
  /** Which of the fading sheets, one after another for each tune; a book has the first of them. */
  readonly steps: readonly SheetStep[];
  readonly marks: Density;
  /** Whether fingers are printed; null, as for `letters`, for the default of the audience. */
  readonly fingers: boolean | null;
  readonly letters: boolean | null;
  /** The lessons with their tunes, or the tunes by title. */
  readonly order: 'lessons' | 'tunes';
  /** One tune only, by id; null for all. */
  readonly only: string | null;
}
