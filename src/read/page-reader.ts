import type { BookSettings, Page } from './book.ts';
import type { BookIndex } from './book-index.ts';
import type { KeptPage } from './read-memo.ts';
import { draftPage, finishPage, namesOf, type PageDraft, type PageNames } from './read-page.ts';
import { sourceText } from './source-text.ts';
import { traceIndex } from './traced-index.ts';

/** A file of the book that is a page. */
export interface PageText {
  readonly kind: Page['kind'];
  readonly file: string;
  readonly text: string;
}

/**
 * Reads pages in two steps: the names that each brings to the book, and when those of the whole book
 * are known, the page itself. Between the two a page is held half read, so both are asked of one reader.
 */
export interface PageReader {
  readonly names: (page: PageText) => PageNames;
  readonly finish: (page: PageText, index: BookIndex, settings: BookSettings) => KeptPage;
}

export function pageReader(): PageReader {
  const drafts = new Map<string, PageDraft>();
  const draftOf = ({ kind, file, text }: PageText): PageDraft =>
    draftPage(kind, sourceText(file, text));
  return {
    names(page) {
      // Always anew: a thread outlives a build, and the page may have changed since it was begun.
      const draft = draftOf(page);
      drafts.set(page.file, draft);
      return namesOf(draft);
    },
    finish(page, index, settings) {
      const trace = traceIndex(index);
      const finished = finishPage(drafts.get(page.file) ?? draftOf(page), trace.index, settings);
      drafts.delete(page.file);
      return { asked: trace.asked(), finished };
    },
  };
}
