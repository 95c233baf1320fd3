import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import type { ClipBlock, Page } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import type { CrossReferences } from './cross-references.ts';
import type { PaperAnswer } from './drill-view.ts';
import type { SiteInput } from './site.ts';
import type { NavEntry } from './site-nav.ts';

/** What making one page needs: the book, where the page stands, and what has been put on it so far. */
export interface PageContext {
  readonly input: SiteInput;
  readonly references: CrossReferences;
  /** Links to the pages of the whole site. */
  readonly nav: readonly NavEntry[];
  /** Words in the book's language. */
  readonly words: Words;
  /** Relative path to the site's root: `''` or `'../'`. */
  readonly root: string;
  /** The page whose blocks are being shown. */
  readonly page: Page | null;
  /** Ids given so far, so that a tune shown twice has each id once. Grows while the page is made. */
  readonly ids: Set<string>;
  /** Symbol definitions of the drawings on the page, by id. Grows while the page is made. */
  readonly symbols: Map<string, string>;
  /** Scripts that the page needs besides `page`, by name. Grows while the page is made. */
  readonly scripts: Set<string>;
  /** Answers to the drills of the page, for the back of its print. Grows while the page is made. */
  readonly answers: PaperAnswer[];
}

/** The context of a page that is still empty. `root` leads from the page to the site's root. */
export const pageContext = (
  input: SiteInput,
  references: CrossReferences,
  nav: readonly NavEntry[],
  root: '' | '../',
  page: Page | null = null,
): PageContext => ({
  input,
  references,
  nav,
  words: wordsFor(input.book.settings.language, input.book.settings.noteNames),
  root,
  page,
  ids: new Set(),
  symbols: new Map(),
  scripts: new Set(),
  answers: [],
});

/** Claims an id for an element: returns it where it is not yet taken on the page, else null. */
export function claimId(context: PageContext, id: string): string | null {
  if (context.ids.has(id)) return null;
  context.ids.add(id);
  return id;
}

/** Whether the notes of a tune may be shown: its rights are known, or the copy is private. */
export const mayShow = (
  tune: Pick<BuiltTune, 'published'>,
  input: Pick<SiteInput, 'isPrivate'>,
): boolean => tune.published || input.isPrivate;

/** Whether a recording may be shown: its tune may, and any learner in it has consented, or the copy is private. */
export const mayPlay = (
  clip: Pick<ClipBlock, 'published'>,
  tune: Pick<BuiltTune, 'published'>,
  input: Pick<SiteInput, 'isPrivate'>,
): boolean => mayShow(tune, input) && (clip.published || input.isPrivate);

/** Path, in the site, of the page of what to play today. */
export const reviewPath = 'review.html';
/** Path of a lesson in the site. */
export const lessonPath = (page: Page): string => `lessons/${page.slug}.html`;
/** Path of a tune's page in the site, by its id. */
export const tunePath = (id: string): string => `tunes/${id}.html`;
/** Path of a plain page in the site. */
export const pagePath = (page: Page): string => `pages/${page.slug}.html`;
