import type { Book } from './book.ts';
import { bookFiles } from './book-files.ts';
import type { ReadingThread } from './read-ahead.ts';
import { type ReadMemo, sameFiles } from './read-memo.ts';

/**
 * Reads the book in a folder. Faults of the book are in `problems`, with their places; a page with
 * an error in it comes without its text. Drafts are left out unless asked for. With a memo, only
 * what has changed is read again. `threadsFor` is told, before anything is parsed, what files there are,
 * and says what other threads read pages too, where none is remembered.
 */
export async function readBook(
  root: string,
  options: {
    readonly drafts?: boolean;
    readonly memo?: ReadMemo;
    readonly threadsFor?: (paths: readonly string[]) => readonly ReadingThread[];
  } = {},
): Promise<Book> {
  const files = await bookFiles(root);
  const last = options.memo?.last;
  if (last && sameFiles(last.files, files)) return last.book;
  const threads = options.threadsFor?.([...files.texts.keys()]) ?? [];
  // Only now is there something to parse: the parser takes longer to load than all else.
  const { bookAhead, bookOf } = await import('./book-of.ts');
  if (last || threads.length === 0) return bookOf(root, files, options);
  return bookOf(root, files, { ...options, ahead: await bookAhead(files, threads, options) });
}
