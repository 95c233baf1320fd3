import type { Page } from '../read/book.ts';
import { blockHtml } from './block-html.ts';
import { lessonPath, type PageContext } from './page-context.ts';
import { type Html, html } from './render.ts';

/**
 * Fields of the template of a lesson or of a plain page; `date` in words, `isoDate` as `2026-09-15`,
 * both null for a plain page.
 */
export interface LessonView {
  readonly title: string;
  readonly date: string | null;
  readonly isoDate: string | null;
  readonly summary: string | null;
  readonly body: Html;
  readonly hasNotation: boolean;
  /** Links to the lessons before and after. */
  readonly turn: readonly {
    readonly way: 'earlier' | 'later';
    readonly href: string;
    readonly title: string;
  }[];
}

/** Data of a lesson's page, its body with the HTML of its blocks. */
export function lessonView(lesson: Page, context: PageContext): LessonView {
  const { lessons } = context.input.book;
  const { dateName, locale } = context.words;
  const at = lessons.indexOf(lesson);
  const [later, earlier] = [lessons[at - 1], lessons[at + 1]];
  const turnTo = (way: 'earlier' | 'later', page: Page | undefined) =>
    page ? [{ way, href: context.root + lessonPath(page), title: page.title }] : [];
  const body = pageBody(lesson, context);
  return {
    title: lesson.title,
    date: lesson.date === null ? null : dateName(lesson.date, locale),
    isoDate: lesson.date,
    summary: lesson.summary,
    body,
    hasNotation: context.symbols.size > 0,
    turn: [...turnTo('earlier', earlier), ...turnTo('later', later)],
  };
}

/** Makes the HTML of the body of a page, blocks included. */
export const pageBody = (page: Page, context: PageContext): Html =>
  html(
    context.input.bodyHtml(page.body, index => blockHtml(index, context), context.words.siteWords),
  );
