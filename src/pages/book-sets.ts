import type { Book, Page, SetBlock } from '../read/book.ts';

/** Path of the page of all sets; there is none in a book without sets. */
export const setsPath = 'played-together.html';

/** A set, and the page that defines it. */
export interface SetOnPage {
  readonly set: SetBlock;
  readonly page: Page;
}

/** The sets of a book in the order of its pages, newest lesson first, each with its page. */
export function setsOf({
  lessons,
  tunePages,
  pages,
}: Pick<Book, 'lessons' | 'tunePages' | 'pages'>): readonly SetOnPage[] {
  return [...lessons, ...tunePages, ...pages].flatMap(page =>
    page.blocks.flatMap(set => (set.kind === 'set' ? [{ set, page }] : [])),
  );
}
