import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import type { Page } from '../read/book.ts';
import { indexBook } from './book-index.ts';
import { setsPath } from './book-sets.ts';
import type { BuiltTune } from './built-tune.ts';
import { frameView } from './frame-view.ts';
import { lessonLink, lessonView, pageBody } from './lesson-view.ts';
import { frontView, repertoireView } from './lists-view.ts';
import {
  lessonPath,
  type PageContext,
  pageContext,
  pagePath,
  reviewPath,
  tunePath,
} from './page-context.ts';
import { pageInputs } from './page-inputs.ts';
import { render } from './render.ts';
import { reviewView } from './review-view.ts';
import { setsView } from './sets-page-view.ts';
import type { SiteInput, SitePage } from './site.ts';
import { tuneView } from './tune-view.ts';

/** A page of the site still to be made. */
export interface PagePlan {
  readonly path: string;
  /** Ids of the tunes whose studies and drawings it shows; null for a page over all their cards. */
  readonly tunes: readonly string[] | null;
  /** Tells one state of all else that it is made from from another. */
  readonly from: () => string;
  /** The page as HTML, from the tunes it asks for. */
  readonly make: (tunes: SiteInput['tunes']) => string;
}

/**
 * Plans every page of the site. Links are relative, so that it opens from a folder; only the page
 * for what is not found must be served from the site's root to find its style sheet.
 *
 * A page over the whole book (a list, an index) is planned by `list` and sees the tunes' cards; one
 * about certain tunes by `show`, which names them.
 */
export function planPages(input: Omit<SiteInput, 'tunes'>): readonly PagePlan[] {
  const index = indexBook(input.book, input.isPrivate);
  const { language, noteNames } = input.book.settings;
  const words = wordsFor(language, noteNames);
  const inputs = pageInputs(input.book, input.isPrivate);
  const plan = (
    path: string,
    kind: string,
    page: Page | null,
    tunes: readonly string[] | null,
    fill: Fill,
  ): PagePlan => ({
    path,
    tunes,
    from: () => (tunes ? inputs.aboutTunes(page, tunes) : inputs.aboutAll(input.cards.values())),
    make(shown) {
      const root = path.includes('/') ? '../' : '';
      const context = pageContext({ ...input, tunes: shown }, index, words, root, page);
      const { view, description } = fill(context);
      const frame = frameView(context, path, view.title, description, kind);
      return render(`pages/${kind}`, { frame, ...view }, context.words);
    },
  });
  const list = (path: string, kind: string, fill: Fill) => plan(path, kind, null, null, fill);
  const show = (path: string, kind: string, page: Page, tunes: readonly string[], fill: Fill) =>
    plan(path, kind, page, [...new Set([...tunes, ...inputs.mentionedOn(page)])], fill);
  const { book } = input;
  const tunesOfSets = [...new Set(index.sets.flatMap(({ set }) => set.tunes.map(tune => tune.of)))];
  const summary = (page: Page): string | null => page.summary;
  return [
    list('index.html', 'front', c => ({
      view: frontView(c),
      description: book.settings.about,
    })),
    list('lessons/index.html', 'lessons', c => ({
      view: {
        title: c.words.siteWords.lessons,
        lessons: book.lessons.map(l => lessonLink(l, c)),
      },
      description: null,
    })),
    ...book.lessons.map(lesson =>
      show(lessonPath(lesson), 'lesson', lesson, [], c => ({
        view: lessonView(lesson, c),
        description: summary(lesson),
      })),
    ),
    list('tunes/index.html', 'tunes', c => ({ view: repertoireView(c), description: null })),
    ...[...index.definedIn].map(([id, page]) =>
      show(tunePath(id), 'tune', page, [id], c => {
        const tune = shownTune(id, c);
        return { view: tuneView(tune, c), description: tune.credits };
      }),
    ),
    ...book.pages.map(page =>
      show(pagePath(page), 'page', page, [], c => ({
        view: { title: page.title, body: pageBody(page, c) },
        description: summary(page),
      })),
    ),
    ...(index.sets.length === 0
      ? []
      : [
          plan(setsPath, 'sets', null, tunesOfSets, c => ({
            view: setsView(c),
            description: c.words.setWords.intro,
          })),
        ]),
    ...(book.lessons.length === 0
      ? []
      : [
          list(reviewPath, 'review', c => {
            c.scripts.add('review');
            return { view: reviewView(c), description: c.words.reviewWords.lead };
          }),
        ]),
    list('how-to-read.html', 'how-to-read', ({ words }) => ({
      view: { title: words.siteWords.howToRead, sections: marksSections(words) },
      description: null,
    })),
    list('404.html', 'not-found', ({ words }) => ({
      view: { title: words.siteWords.notFound },
      description: null,
    })),
  ];
}

/** Makes every page at once, for a book whose tunes are all at hand. */
export const makePages = (input: SiteInput): readonly SitePage[] =>
  planPages(input).map(({ path, make }) => ({ path, html: make(input.tunes) }));

function shownTune(id: string, { input }: PageContext): BuiltTune {
  const tune = input.tunes.get(id);
  if (!tune) throw new Error(`the tune ${id} was not built`);
  return tune;
}

type Fill = (context: PageContext) => {
  readonly view: { readonly title: string } & object;
  readonly description: string | null;
};

/** The marks explained, each with the drawing that the template has for it. */
const marksSections = ({ howToRead, noteNames }: Words): readonly object[] =>
  howToRead(noteNames).map(section => ({
    ...section,
    marks: section.marks.map(mark => ({
      name: mark.name,
      text: mark.text,
      stroke: mark.sign === 'down' || mark.sign === 'up' ? mark.sign : null,
      slur: mark.sign === 'slur',
      kin: mark.sign === 'down' || mark.sign === 'up' || mark.sign === 'slur' ? null : mark.sign,
    })),
  }));
