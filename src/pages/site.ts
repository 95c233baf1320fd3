import type { Root } from 'hast';
import type { Direction } from '../../shared/music/tune.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Book, NotesBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import type { TuneCards } from './tune-card.ts';

/** The book, as far as pages show it: all of it, or the part that one page depends on (`page-dependencies.ts`). */
export type PageBook = Pick<Book, 'settings' | 'lessons' | 'tunePages' | 'pages'>;

/** What the pages are made from. The build fills it in; no other stage is called from here. */
export interface SiteInput extends PageTools {
  readonly book: PageBook;
  /**
   * The tunes that the page is about, by id, each with its study and drawings.
   */
  readonly tunes: { get(id: string): BuiltTune | undefined };
  /** What lists say of every tune, by id, in the order of the book. */
  readonly cards: TuneCards;
  /** Made under `--private`: the teacher's own notes are shown, and each page says so. */
  readonly isPrivate: boolean;
}

/** What pages take from other stages. */
export interface PageTools {
  /** A body as HTML; `blockHtml` is asked for each of the page's blocks, by index, where it stands. */
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
  /** Taken in the stroke of the note before. */
  readonly slurred: boolean;
}
