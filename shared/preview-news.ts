import type { Severity } from './rules.ts';

/** What the teacher's preview tells the pages that are open in it, after every build. */
export interface PreviewNews {
  /** Another at every run, so that a page knows one that was started again. */
  readonly run: string;
  /** Builds of this run so far. */
  readonly buildNumber: number;
  /** `working`: the first build is not done. `failed`: the pages are those of the last good build. */
  readonly outcome: 'working' | 'built' | 'failed';
  /** Files of the site that this build has changed, taken away or added, by path from its root. */
  readonly changed: readonly string[];
  readonly problems: readonly WordedProblem[];
  /** `2 errors, 1 warning`. */
  readonly counted: string;
}

/** A problem in words, ready to be shown. */
export interface WordedProblem {
  readonly rule: string;
  readonly severity: Severity;
  /** From the book's folder; null where the whole book is meant. */
  readonly file: string | null;
  /** `Line 7, column 14`. */
  readonly at: string | null;
  readonly message: string;
  readonly mend: string;
  /** The line it is about and a caret under its column; empty where there is none. */
  readonly excerpt: readonly string[];
}

/** What the preview's own page for tapping along knows of the book: `preview/book.json`. */
export interface PreviewBook {
  readonly title: string;
  readonly tunes: readonly { readonly id: string; readonly title: string }[];
  /** Recordings, by path from the book's folder. */
  readonly recordings: readonly string[];
}

/** Where the preview's own things stand, beside the site's; no book has a folder of this name. */
export const previewPaths = {
  news: '/preview/news',
  book: '/preview/book.json',
  tap: '/preview/tap.html',
} as const;
