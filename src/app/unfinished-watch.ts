import { type Problem, problem } from '../../shared/problem.ts';
import { type ReadState, rereadBook } from '../incremental/reread-book.ts';
import type { Book } from '../read/book.ts';

/**
 * Finds errors that a book would have without its unfinished pages and does not have with them, such as
 * a lesson that shows a tune of one: a warning at each such place, since a preview would be silent
 * and the build that is to be published fail. It remembers the pages from one reading to the next.
 */
export function unfinishedWatch(): (book: Book) => Promise<readonly Problem[]> {
  let last: ReadState | null = null;
  return async book => {
    const pages = [...book.lessons, ...book.tunePages, ...book.pages];
    if (!pages.some(page => page.unfinished)) return [];
    const known = new Set(book.problems.map(keyOf));
    last = await rereadBook(book.root, {}, last);
    return last.book.problems
      .filter(p => p.severity === 'error' && !known.has(keyOf(p)))
      .map(p => problem('unfinished-needed', p.place, { facts: { rule: p.rule } }));
  };
}

const keyOf = ({ rule, place, actual }: Problem): string => JSON.stringify([rule, place, actual]);
