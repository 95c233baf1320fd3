import type { Severity } from './rules.ts';

/** What the preview sends to its open pages after every build. */
export interface PreviewNews {
  /** A random id of this run of the preview, by which a page notices a restart. */
  readonly run: string;
  /** Number of builds in this run so far. */
  readonly buildNumber: number;
  /** `working`: the first build is running. `failed`: the pages are those of the last successful build. */
  readonly outcome: 'working' | 'built' | 'failed';
  /** Paths, from the site's root, of the files that this build changed, removed or added. */
  readonly changed: readonly string[];
  readonly problems: readonly WordedProblem[];
  /** `2 errors, 1 warning`. */
  readonly counted: string;
}

/** A problem in words. */
export interface WordedProblem {
  readonly rule: string;
  readonly severity: Severity;
  /** Path from the book's folder; null where the problem is of the whole book. */
  readonly file: string | null;
  /** `Line 7, column 14`. */
  readonly at: string | null;
  readonly message: string;
  readonly mend: string;
  /** The line at its place, and a line with a caret under its column; empty without a place. */
  readonly excerpt: readonly string[];
}

/** The data of the preview's page for tapping along: `preview/book.json`. */
export interface PreviewBook {
  readonly title: string;
  readonly tunes: readonly { readonly id: string; readonly title: string }[];
  /** Paths of recordings, from the book's folder. */
  readonly recordings: readonly string[];
}

/** Paths of the preview's own files, beside the site's; no book has a folder of this name. */
export const previewPaths = {
  news: '/preview/news',
  book: '/preview/book.json',
  tap: '/preview/tap.html',
} as const;
