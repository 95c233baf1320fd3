import type { WrittenFile } from '../output/open-site.ts';
import type { TuneSummary } from '../pipeline/made-tune.ts';
import type { ReadState } from './reread-book.ts';

/** What a build of a book leaves for the next one into the same folder. Plain data. */
export interface BuildState {
  /** Hash of the program that left it: what another program made is not taken over. */
  readonly program: string;
  /** The book as it was last read; null before the first reading. */
  readonly reading: ReadState | null;
  /** The site as it was last written; null before the first time. */
  readonly site: SiteState | null;
}

export interface SiteState {
  /** Hash of the book's files. */
  readonly filesHash: string;
  /** It was made without PDFs and zip. */
  readonly isQuick: boolean;
  readonly pages: number;
  /** By the hash of their input, in the order of the book. */
  readonly tunes: ReadonlyMap<string, TuneSummary>;
  /** Every file, by path. */
  readonly files: ReadonlyMap<string, WrittenFile>;
}

/** `kept`: what the cache has; taken over only where this program left it. */
export function stateFrom(kept: unknown, program: string): BuildState {
  const state = kept as BuildState | undefined;
  return state?.program === program ? state : { program, reading: null, site: null };
}
