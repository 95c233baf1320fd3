import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import { setsPath } from './book-sets.ts';
import { crossReferences } from './cross-references.ts';
import { lessonLink } from './lesson-link.ts';
import { frontView, repertoireView } from './lists-view.ts';
import {
  fillPage,
  type PageFill,
  type PageRecipe,
  type PageSubject,
  rootFrom,
} from './make-page.ts';
import {
  lessonPath,
  type PageContext,
  pageContext,
  pagePath,
  reviewPath,
  tunePath,
} from './page-context.ts';
import { pageDependencies } from './page-dependencies.ts';
import { reviewView } from './review-view.ts';
import type { PageTools, SiteInput } from './site.ts';
import { siteNav } from './site-nav.ts';

/** A page of the site that is planned and not made yet. */
export type PagePlan = ListPlan | ShowPlan;

/** A page about the whole book, made from the cards of all tunes. */
export interface ListPlan {
  readonly path: string;
  readonly tunes: null;
  /** Hash of every input of the page. */
  readonly inputHash: () => string;
  /** Makes the page as HTML. */
  readonly make: (tools: PageTools) => string;
}

/** A page about certain tunes. */
export interface ShowPlan {
  readonly path: string;
  /** Ids of the tunes that it shows. */
  readonly tunes: readonly string[];
  /** Hash of every input of the page but the studies and drawings of its tunes. */
  readonly inputHash: () => string;
  /** Computed on each access: a book has many pages, and a rebuild makes few of them. */
  readonly recipe: PageRecipe;
}

/** Plans every page of the site; makes none. */
export function planPages(input: Omit<SiteInput, 'tunes' | keyof PageTools>): readonly PagePlan[] {
  const { book, isPrivate } = input;
  const { language, noteNames } = book.settings;
  const references = crossReferences(book, isPrivate);
  const nav = siteNav(book, wordsFor(language, noteNames));
  const dependencies = pageDependencies(book, nav, isPrivate);
  const list = (path: string, kind: string, fill: (c: PageContext) => PageFill): ListPlan => ({
    path,
    tunes: null,
    inputHash: dependencies.listHash,
    make(tools) {
      const context = pageContext(
        { ...input, ...tools, tunes: new Map() },
        references,
        nav,
        rootFrom(path),
      );
      return fillPage(path, kind, fill(context), context);
    },
  });
  const show = (path: string, subject: PageSubject, about: readonly string[]): ShowPlan => {
    const { page } = subject;
    const tunes = [...new Set([...about, ...(page ? dependencies.tunesOn(page) : [])])];
    const { book, inputHash } = dependencies.inputsOf(page, tunes);
    return {
      path,
      tunes,
      inputHash,
      get recipe() {
        return { path, subject, book: book(), nav };
      },
    };
  };
  const tunesOfSets = references.sets.flatMap(({ set }) => set.tunes.map(tune => tune.of));
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
    ...book.lessons.map(page => show(lessonPath(page), { kind: 'lesson', page }, [])),
    list('tunes/index.html', 'tunes', c => ({ view: repertoireView(c), description: null })),
    ...[...references.definedIn].map(([id, page]) =>
      show(tunePath(id), { kind: 'tune', page, id }, [id, ...dependencies.tunesInReasons(id)]),
    ),
    ...book.pages.map(page => show(pagePath(page), { kind: 'page', page }, [])),
    ...(references.sets.length === 0
      ? []
      : [show(setsPath, { kind: 'sets', page: null }, tunesOfSets)]),
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
    // Served for any path that is not found, so it alone must find its styles from the site's root.
    list('404.html', 'not-found', ({ words }) => ({
      view: { title: words.siteWords.notFound },
      description: null,
    })),
  ];
}

/** Explanations of all marks, each with the name of its drawing in the template. */
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
