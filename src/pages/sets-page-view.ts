import type { Page } from '../read/book.ts';
import { innerHtml } from './block-html.ts';
import { lessonPath, type PageContext, pagePath } from './page-context.ts';
import { setView } from './set-view.ts';

/** Makes the data of the page of all sets, each with a link to the page that defines it. */
export const setsView = (context: PageContext) => ({
  title: context.words.setWords.title,
  labels: context.words.setWords,
  sets: context.references.sets.map(({ set, page }) => ({
    ...setView(set, innerHtml(set.body, { ...context, page }), context),
    page: page.kind === 'tune' ? null : pageLink(page, context.root),
  })),
});

const pageLink = (page: Page, root: string) => ({
  href: root + (page.kind === 'lesson' ? lessonPath(page) : pagePath(page)),
  title: page.title,
});
