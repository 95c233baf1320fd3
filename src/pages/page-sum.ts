import { hash } from 'node:crypto';
import type { Page } from '../read/book.ts';

/** Tells one state of a page from another. */
export interface PageSum {
  /** Of its head and its blocks, which other pages may show. */
  readonly told: string;
  /** Of all of it. */
  readonly whole: string;
}

export function pageSum(page: Page): PageSum {
  const told = sum(text([headOf(page), page.blocks]));
  return { told, whole: sum(told + text(page.body)) };
}

/** What the pages beside a lesson show of it. */
export const headOf = ({ kind, slug, title, date, draft, summary }: Page): object => ({
  kind,
  slug,
  title,
  date,
  draft,
  summary,
});

/** Data as text, but for where in the teacher's files it stands, which no page shows. */
const text = (data: object): string =>
  JSON.stringify(data, (key, value) =>
    key === 'place' || key === 'position' || key === 'line' ? undefined : value,
  );

export const sum = (of: string): string => hash('sha256', of, 'base64');
