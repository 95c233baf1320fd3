import type { BookSettings, Page } from './book.ts';
import type { BookNames } from './book-names.ts';
import type { PageNames } from './page-names.ts';
import {
  type FinishedPage,
  finishPage,
  namesOf,
  type PageDraft,
  unfinishedPage,
} from './read-page.ts';
import { sourceText } from './source-text.ts';

/** A Markdown file of a book. */
export interface PageText {
  readonly kind: Page['kind'];
  /** From the book's folder, with forward slashes. */
  readonly file: string;
  readonly text: string;
}

/**
 * Reads pages in two steps, since a page may refer to what another defines: first the names that each
 * page defines, then, when the names of the whole book are known, the page itself.
 */
export interface PageReader {
  readonly names: (page: PageText) => PageNames;
  /** Takes a page whose `names` have been read. */
  readonly finish: (page: PageText, names: BookNames, settings: BookSettings) => FinishedPage;
}

/** Reads every page anew. Holds each page half read from its first step to its second. */
export function pageReader(): PageReader {
  const begun = new Map<string, PageDraft>();
  const begin = ({ kind, file, text }: PageText): PageDraft =>
    unfinishedPage(kind, sourceText(file, text));
  return {
    names(page) {
      const draft = begin(page);
      begun.set(page.file, draft);
      return namesOf(draft);
    },
    finish(page, names, settings) {
      const draft = begun.get(page.file) ?? begin(page);
      begun.delete(page.file);
      return finishPage(draft, names, settings);
    },
  };
}
