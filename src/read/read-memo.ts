import type { Book } from './book.ts';
import { type BookFiles, settingsFile } from './book-files.ts';
import type { FinishedPage, PageNames } from './read-page.ts';
import type { SettingsReading } from './read-settings.ts';
import type { Asked } from './traced-index.ts';

/**
 * What readings of a book remember from one to the next. It is filled as it goes, and holds only
 * what the last reading asked for. All of it is plain data.
 */
export interface ReadMemo {
  /** The files as they were, and the book that they made. */
  last: { readonly files: BookFiles; readonly book: Book } | null;
  /** The settings as they were read from the files in `last`, under which its pages were read. */
  settings: SettingsReading | null;
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
  settings: null,
  names: new Map(),
  pages: new Map(),
});

/** Whether not a byte of a book's files, nor the name of one, has changed. */
export const sameFiles = (a: BookFiles, b: BookFiles): boolean =>
  sameList([...a.texts].flat(), [...b.texts].flat()) &&
  sameList(a.media, b.media) &&
  sameList(a.unread ?? [], b.unread ?? []) &&
  JSON.stringify(a.problems ?? []) === JSON.stringify(b.problems ?? []);

/** Whether settings, of which some name media, read the same. */
export const sameSettings = (a: BookFiles, b: BookFiles): boolean =>
  a.texts.get(settingsFile) === b.texts.get(settingsFile) && sameList(a.media, b.media);

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);
