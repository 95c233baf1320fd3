import type { Root } from 'hast';
import type { Direction } from '../../shared/music/tune.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Book, NotesBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import type { TuneCards } from './tune-card.ts';

/** What pages show of a book: all of it, or the part that one page depends on (`page-dependencies.ts`). */
export type PageBook = Pick<Book, 'settings' | 'lessons' | 'tunePages' | 'pages'>;

/** Everything that pages are made from. Pages call no other stage themselves. */
export interface SiteInput extends PageTools {
  readonly book: PageBook;
  /** The tunes that the page is about, by id, each with its study and drawings. */
  readonly tunes: { get(id: string): BuiltTune | undefined };
  /** Card of every tune, by id, in the order of the book; empty for a page about certain tunes. */
  readonly cards: TuneCards;
  /** Built with `--private`: private notes are shown, and each page says so. */
  readonly isPrivate: boolean;
}

/** Functions of other stages that pages call. */
export interface PageTools {
  /** Writes a body as HTML, with `blockHtml(index)` in place of each block. */
  readonly bodyHtml: (
    root: Root,
    blockHtml: (block: number) => string,
    words: Words['siteWords'],
  ) => string;
  /** The notes of a `:notes[…]` chain; null where its ABC could not be read. */
  readonly noteChain: (block: NotesBlock) => readonly ChainNote[] | null;
}

/** One sounded note of a chain in running text. */
export interface ChainNote {
  /** `F sharp`, `D`. */
  readonly letter: string;
  /** `high 2 on A`; null where no finger reaches it. */
  readonly spoken: string | null;
  readonly direction: Direction;
  /** Played in the same stroke as the note before. */
  readonly slurred: boolean;
}
