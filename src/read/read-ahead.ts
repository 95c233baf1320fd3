import type { BookSettings } from './book.ts';
import type { BookIndex } from './book-index.ts';
import { type PageText, pageReader } from './page-reader.ts';
import type { KeptPage } from './read-memo.ts';
import type { PageNames } from './read-page.ts';

/** Another thread that reads pages: as `PageReader`, of which it has one. */
export interface ReadingThread {
  readonly names: (pages: readonly PageText[]) => Promise<readonly PageNames[]>;
  /** Pages that it has given the names of. */
  readonly finish: (
    pages: readonly PageText[],
    index: BookIndex,
    settings: BookSettings,
  ) => Promise<readonly KeptPage[]>;
}

/** Pages that were read before the book was put together, by file. */
export interface ReadAhead {
  readonly names: ReadonlyMap<string, PageNames>;
  readonly pages: ReadonlyMap<string, KeptPage>;
}

/** How many pages another thread takes at a time: some thirty milliseconds' work. */
const batchSize = 32;

/**
 * Reads pages in several threads, this one among them. Each takes the next pages when it has read the
 * last, and finishes those that it began, when the names of all are known and `indexOf` has made an
 * index of them. What a thread that fails has not read is left out: it is read when it is asked for.
 */
export async function readAhead(
  pages: readonly PageText[],
  threads: readonly ReadingThread[],
  indexOf: (names: ReadonlyMap<string, PageNames>) => BookIndex,
  settings: BookSettings,
): Promise<ReadAhead> {
  const reader = pageReader();
  const names = new Map<string, PageNames>();
  const read = new Map<string, KeptPage>();
  let next = 0;
  const take = (count: number): readonly PageText[] => {
    const taken = pages.slice(next, next + count);
    next += taken.length;
    return taken;
  };
  const shares = threads.map(thread => ({ thread, begun: [] as PageText[] }));
  const begin = async ({ thread, begun }: (typeof shares)[number]): Promise<void> => {
    for (let batch = take(batchSize); batch.length > 0; batch = take(batchSize)) {
      for (const page of await thread.names(batch)) names.set(page.file, page);
      begun.push(...batch);
    }
  };
  const here: PageText[] = [];
  const beginHere = (page: PageText): void => {
    names.set(page.file, reader.names(page));
    here.push(page);
  };
  const others = Promise.allSettled(shares.map(begin));
  for (let [page] = take(1); page !== undefined; [page] = take(1)) {
    beginHere(page);
    await new Promise(setImmediate); // for the others' answers to come in
  }
  await others;
  for (const page of pages) if (!names.has(page.file)) beginHere(page);
  const index = indexOf(names);
  const finish = async ({ thread, begun }: (typeof shares)[number]): Promise<void> => {
    const kept = await thread.finish(begun, index, settings);
    for (const [at, page] of begun.entries()) read.set(page.file, kept[at] as KeptPage);
  };
  const finished = Promise.allSettled(shares.map(finish));
  for (const page of here) read.set(page.file, reader.finish(page, index, settings));
  await finished;
  return { names, pages: read };
}
