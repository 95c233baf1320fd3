import type { Written } from '../output/open-site.ts';
import type { PageSum } from '../pages/page-sum.ts';
import type { TuneNote } from '../pipeline/make-tune.ts';
import type { Block, Book, Page } from '../read/book.ts';
import type { ReadMemo } from '../read/read-memo.ts';

/** What a build tells the next one of the same book into the same folder. */
export interface Ledger {
  /** Of the program that wrote it: another's is not taken over. */
  readonly program: string;
  /** The book that the site was made from; null before the first build. */
  readonly book: Book | null;
  /** It was made without PDFs and zip. */
  readonly isQuick: boolean;
  /** How many pages it had. */
  readonly pages: number;
  /** Notes of the tunes, by their keys, in the order of the book. */
  readonly notes: ReadonlyMap<string, TuneNote>;
  /** The files of the site as they were left, by path. */
  readonly files: ReadonlyMap<string, Written>;
  /** Sums of the book's pages, and of blocks about its tunes. */
  readonly pageSums: ReadonlyMap<Page, PageSum>;
  readonly blockSums: ReadonlyMap<Block, string>;
  /** The book as it was last read, in the same memory as `book` where it is the same. */
  readonly read: ReadMemo;
}

/** The ledger as it was kept, if this program wrote it; else null. */
export function knownLedger(kept: unknown, program: string): Ledger | null {
  const ledger = kept as Ledger | undefined;
  return ledger?.program === program ? ledger : null;
}
