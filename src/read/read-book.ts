import type { Book } from './book.ts';
import { bookOf } from './book-of.ts';
import { readBookFiles } from './read-book-files.ts';

/**
 * Reads the book in a folder. Faults of the book are in `problems`, with their places; a page with
 * an error in it comes without its text. Unfinished pages are left out unless `unfinished` asks for them.
 */
export const readBook = async (
  root: string,
  options: { readonly unfinished?: boolean } = {},
): Promise<Book> => bookOf(root, await readBookFiles(root), options);
