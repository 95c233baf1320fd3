import type { Words } from '../../shared/words/words-for.ts';
import { setsOf, setsPath } from './book-sets.ts';
import { pagePath, reviewPath } from './page-context.ts';
import type { PageBook } from './site.ts';

/**
 * A link of the site's navigation, which stands at the head of every page; its path is from the
 * site's root.
 */
export interface NavEntry {
  readonly to: string;
  readonly label: string;
}

/** The links of the navigation, in the order in which pages show them. */
export function siteNav(book: PageBook, words: Words): readonly NavEntry[] {
  const { siteWords, setWords, reviewWords } = words;
  return [
    { to: 'lessons/index.html', label: siteWords.lessons },
    { to: 'tunes/index.html', label: siteWords.tunes },
    ...book.pages.map(page => ({ to: pagePath(page), label: page.title })),
    ...(setsOf(book).length === 0 ? [] : [{ to: setsPath, label: setWords.title }]),
    ...(book.lessons.length === 0 ? [] : [{ to: reviewPath, label: reviewWords.title }]),
    { to: 'how-to-read.html', label: siteWords.howToRead },
  ];
}
