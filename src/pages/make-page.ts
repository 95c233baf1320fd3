import type { Page } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { crossReferences } from './cross-references.ts';
import { frameView } from './frame-view.ts';
import { lessonView, pageBody } from './lesson-view.ts';
import { type PageContext, pageContext } from './page-context.ts';
import { render } from './render.ts';
import { setsView } from './sets-page-view.ts';
import type { PageBook, SiteInput } from './site.ts';
import type { NavEntry } from './site-nav.ts';
import { tuneView } from './tune-view.ts';

/**
 * A page about certain tunes, still to be made, with all of the book that it shows: plain data, so
 * that the thread that has made the tunes can make it too.
 */
export interface PageRecipe {
  readonly path: string;
  readonly subject: PageSubject;
  readonly book: PageBook;
  readonly nav: readonly NavEntry[];
}

/** Subject of a page: a page that the teacher wrote, a tune, or all sets. */
export type PageSubject =
  | { readonly kind: 'lesson' | 'page'; readonly page: Page }
  | { readonly kind: 'tune'; readonly page: Page; readonly id: string }
  | { readonly kind: 'sets'; readonly page: null };

/** Makes a page as HTML. `tunes` must hold every tune of the recipe. */
export function makePage(
  { path, subject, book, nav }: PageRecipe,
  input: Omit<SiteInput, 'book' | 'cards'>,
): string {
  const whole = { ...input, book, cards: new Map() };
  const references = crossReferences(book, input.isPrivate);
  const context = pageContext(whole, references, nav, rootFrom(path), subject.page);
  return fillPage(path, subject.kind, fill(subject, context), context);
}

/** Data of the template of a page, and the description of the page for search engines. */
export interface PageFill {
  readonly view: { readonly title: string } & object;
  readonly description: string | null;
}

/** Fills the template of a page, then its frame, as HTML. */
export function fillPage(
  path: string,
  kind: string,
  { view, description }: PageFill,
  context: PageContext,
): string {
  const frame = frameView(context, path, view.title, description, kind);
  return render(`pages/${kind}`, { frame, ...view }, context.words);
}

/** Path from a page to the root of the site. Links are relative, so that the site works from a folder. */
export const rootFrom = (path: string): '' | '../' => (path.includes('/') ? '../' : '');

function fill(subject: PageSubject, context: PageContext): PageFill {
  switch (subject.kind) {
    case 'lesson':
      return { view: lessonView(subject.page, context), description: subject.page.summary };
    case 'page': {
      const { title, summary } = subject.page;
      const view = { title, body: pageBody(subject.page, context) };
      return { view, description: summary };
    }
    case 'tune': {
      const tune = shownTune(subject.id, context);
      return { view: tuneView(tune, context), description: tune.credits };
    }
    case 'sets':
      return { view: setsView(context), description: context.words.setWords.intro };
  }
}

function shownTune(id: string, { input }: PageContext): BuiltTune {
  const tune = input.tunes.get(id);
  if (!tune) throw new Error(`the tune ${id} was not built`);
  return tune;
}
