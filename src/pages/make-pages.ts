import { howToRead } from '../../shared/words/en/how-to-read.ts';
import { siteWords } from '../../shared/words/en/site.ts';
import type { Page } from '../read/book.ts';
import { indexBook } from './book-index.ts';
import { frameView } from './frame-view.ts';
import { lessonLink, lessonView, pageBody } from './lesson-view.ts';
import { frontView, repertoireView } from './lists-view.ts';
import { lessonPath, type PageContext, pageContext, pagePath, tunePath } from './page-context.ts';
import { render } from './render.ts';
import type { SiteInput, SitePage } from './site.ts';
import { tuneView } from './tune-view.ts';

/**
 * Makes every page of the site. Links are relative, so that it opens from a folder; only the page
 * for what is not found must be served from the site's root to find its style sheet.
 */
export function makePages(input: SiteInput): readonly SitePage[] {
  const index = indexBook(input.book, input.isPrivate);
  const make = (path: string, kind: string, page: Page | null, fill: Fill): SitePage => {
    const context = pageContext(input, index, path.includes('/') ? '../' : '', page);
    const { view, description } = fill(context);
    const frame = frameView(context, path, view.title, description, kind);
    return { path, html: render(`pages/${kind}`, { frame, ...view }) };
  };
  const { book, tunes } = input;
  const summary = (page: Page): string | null => page.summary;
  return [
    make('index.html', 'front', null, c => ({
      view: frontView(c),
      description: book.settings.about,
    })),
    make('lessons/index.html', 'lessons', null, c => ({
      view: {
        title: siteWords.lessons,
        lessons: book.lessons.map(l => lessonLink(l, c.root)),
      },
      description: null,
    })),
    ...book.lessons.map(lesson =>
      make(lessonPath(lesson), 'lesson', lesson, c => ({
        view: lessonView(lesson, c),
        description: summary(lesson),
      })),
    ),
    make('tunes/index.html', 'tunes', null, c => ({ view: repertoireView(c), description: null })),
    ...[...tunes.values()].map(tune =>
      make(tunePath(tune.block.id), 'tune', index.definedIn.get(tune.block.id) ?? null, c => ({
        view: tuneView(tune, c),
        description: tune.credits,
      })),
    ),
    ...book.pages.map(page =>
      make(pagePath(page), 'page', page, c => ({
        view: { title: page.title, body: pageBody(page, c) },
        description: summary(page),
      })),
    ),
    make('how-to-read.html', 'how-to-read', null, () => ({
      view: { title: siteWords.howToRead, sections: marksSections() },
      description: null,
    })),
    make('404.html', 'not-found', null, () => ({
      view: { title: siteWords.notFound },
      description: null,
    })),
  ];
}

type Fill = (context: PageContext) => {
  readonly view: { readonly title: string } & object;
  readonly description: string | null;
};

/** The marks explained, each with the drawing that the template has for it. */
const marksSections = (): readonly object[] =>
  howToRead.map(section => ({
    ...section,
    marks: section.marks.map(mark => ({
      name: mark.name,
      text: mark.text,
      stroke: mark.sign === 'down' || mark.sign === 'up' ? mark.sign : null,
      slur: mark.sign === 'slur',
      kin: mark.sign === 'down' || mark.sign === 'up' || mark.sign === 'slur' ? null : mark.sign,
    })),
  }));
