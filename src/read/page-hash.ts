import { hash } from 'node:crypto';
import type { Page } from './book.ts';

/** Hashes (SHA-256) of the content of a page. Places in source files are left out: no page of the site shows them. */
export interface PageHashes {
  /** Hash of its head and its blocks, which other pages may show. */
  readonly blocks: string;
  /** Hash of head, blocks and body. */
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
