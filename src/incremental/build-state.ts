import type { WrittenFile } from '../output/open-site.ts';
import type { TuneSummary } from '../pipeline/made-tune.ts';
import type { ReadState } from './reread-book.ts';

/** What a build leaves for the next build of the same book into the same folder. Plain data. */
export interface BuildState {
  /** Hash of the program that made it: the state of another version is not used. */
  readonly program: string;
  /** The book as last read; null before the first time. */
  readonly reading: ReadState | null;
  /** The site as last written; null before the first time. */
  readonly site: SiteState | null;
}

export interface SiteState {
  /** Hash of the book's files. */
  readonly filesHash: string;
  /** Whether it was made without PDFs and zip. */
  readonly isQuick: boolean;
  readonly pages: number;
  /** Summaries by input hash, in the order of the book. */
  readonly tunes: ReadonlyMap<string, TuneSummary>;
  /** Every file, by path. */
  readonly files: ReadonlyMap<string, WrittenFile>;
}

/** The state that was read from the cache as `kept`, or an empty one where another program left it. */
export function stateFrom(kept: unknown, program: string): BuildState {
  const state = kept as BuildState | undefined;
  return state?.program === program ? state : { program, reading: null, site: null };
}
