import type { Book } from './book.ts';
import type { BookFiles } from './book-files.ts';
import type { FinishedPage, PageNames } from './read-page.ts';
import type { Asked } from './traced-index.ts';

/**
 * What readings of a book remember from one to the next. It is filled as it goes, and holds only
 * what the last reading asked for. All of it is plain data.
 */
export interface ReadMemo {
  /** The files as they were, and the book that they made. */
  last: { readonly files: BookFiles; readonly book: Book } | null;
  /** The settings that the pages were read under, as text. */
  settings: string;
  /** By file, of the texts in `last`. */
  names: Map<string, PageNames>;
  pages: Map<string, KeptPage>;
}

/** A page, and all that it was made from besides its text and the settings. */
export interface KeptPage {
  readonly asked: Asked;
  readonly finished: FinishedPage;
}

export const readMemo = (): ReadMemo => ({
  last: null,
  settings: '',
  names: new Map(),
  pages: new Map(),
});

/** Whether not a byte of a book's files, nor the name of one, has changed. */
export const sameFiles = (a: BookFiles, b: BookFiles): boolean =>
  sameList([...a.texts].flat(), [...b.texts].flat()) &&
  sameList(a.media, b.media) &&
  sameList(a.unread ?? [], b.unread ?? []) &&
  JSON.stringify(a.problems ?? []) === JSON.stringify(b.problems ?? []);

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);
