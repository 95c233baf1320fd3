import { hash } from 'node:crypto';
import type { Page } from './book.ts';

/** Hashes of what a page holds, but for where in the teacher's files it stands, which no page shows. */
export interface PageHashes {
  /** Of its head and its blocks, which other pages may show. */
  readonly blocks: string;
  /** Of all of it. */
  readonly whole: string;
}

/** Hashes a page as read. */
export function pageHashes({ body, blocks, ...head }: Omit<Page, 'hashes' | 'file'>): PageHashes {
  const told = hashOf([head, blocks]);
  return { blocks: told, whole: hashOf([told, body]) };
}

const places: ReadonlySet<string> = new Set(['place', 'position', 'line']);

const hashOf = (data: object): string =>
  hash(
    'sha256',
    JSON.stringify(data, (key, value) => (places.has(key) ? undefined : value)),
    'base64',
  );
