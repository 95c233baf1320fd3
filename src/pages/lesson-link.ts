import type { Page } from '../read/book.ts';
import { lessonPath, type PageContext } from './page-context.ts';

/** A lesson as lists show it. */
export interface LessonLink {
  readonly href: string;
  readonly title: string;
  /** `Tuesday, 15 September 2026`. */
  readonly date: string | null;
  readonly isoDate: string | null;
  readonly isUnfinished: boolean;
  readonly summary: string | null;
}

/** Fields of a link to a lesson, as seen from the page of the context. */
export const lessonLink = (page: Page, { root, words }: PageContext): LessonLink => ({
  href: root + lessonPath(page),
  title: page.title,
  date: page.date === null ? null : words.dateName(page.date, words.locale),
  isoDate: page.date,
  isUnfinished: page.unfinished ?? false,
  summary: page.summary,
});
