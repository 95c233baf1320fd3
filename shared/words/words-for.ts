import type { NoteNames } from '../music/note-names.ts';
import * as german from './de/reader-words.ts';
import * as english from './en/reader-words.ts';
import type { InAnyLanguage } from './in-any-language.ts';
import { localeOf, type WordedLanguage, wordedIn } from './worded-languages.ts';

/** Sentences and labels for the readers of a book, by name: the same in every language. */
export type ReaderWords = InAnyLanguage<typeof english>;

/** The words of one book, with what it calls its notes and how it writes days. */
export interface Words extends ReaderWords {
  readonly noteNames: NoteNames;
  /** BCP 47: as days are written, and names sorted. */
  readonly locale: string;
}

/** As plain objects: a module is slow to copy. */
const languages: Readonly<Record<WordedLanguage, ReaderWords>> = {
  en: { ...english },
  de: { ...german },
};

/**
 * Words in the language of a BCP 47 tag, whatever its region; in English where there are none, and
 * then days are written as in English too. A page's script has its language from its bundle instead
 * (`src/bundling/bundle.mjs`), so that no reader loads words that they do not read.
 */
export const wordsFor = (language: string, noteNames: NoteNames): Words => ({
  ...languages[wordedIn(language)],
  noteNames,
  locale: localeOf(language),
});
