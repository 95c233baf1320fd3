import { existsSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { UsageError } from '../app/usage-error.ts';

/**
 * Absolute path of the book's folder: the one given, else this folder or `content`, whichever holds a
 * `bowbook.yaml`. Throws `UsageError` where none does.
 */
export function bookFolder(asked: string | undefined): string {
  const tried = asked === undefined ? ['.', 'content'] : [asked];
  const found = tried.find(f => existsSync(join(f, 'bowbook.yaml')));
  if (found !== undefined) return resolve(found);
  throw new UsageError(
    `No bowbook.yaml in ${tried.map(f => `"${f}"`).join(' or ')}. Name the folder that holds it.`,
  );
}

/** Throws `UsageError` where the site would go over its book, or a private site over a public one. */
export function checkOut(root: string, out: string, isPrivate: boolean): void {
  const inside = relative(out, root);
  if (inside === '' || !inside.startsWith('..')) {
    throw new UsageError(`"${out}" contains the book itself. Choose another folder with --out.`);
  }
  const marker = join(out, 'bowbook-manifest.json');
  const isPrivateSite = existsSync(join(out, 'private.txt'));
  if (existsSync(marker) && isPrivate !== isPrivateSite) {
    const kind = isPrivateSite ? 'a private site' : 'a site to publish';
    throw new UsageError(`"${out}" holds ${kind}. Choose another folder with --out.`);
  }
}
