import { existsSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { UsageError } from '../app/usage-error.ts';

/** The folder asked for, or the nearest that holds a `bowbook.yaml`. */
export function bookFolder(asked: string | undefined): string {
  const tried = asked === undefined ? ['.', 'content'] : [asked];
  const found = tried.find(f => existsSync(join(f, 'bowbook.yaml')));
  if (found !== undefined) return resolve(found);
  throw new UsageError(
    `No bowbook.yaml in ${tried.map(f => `"${f}"`).join(' or ')}. Name the folder that holds it.`,
  );
}

/** A site may not be written over its book, nor private notes over a public site. */
export function checkOut(root: string, out: string, isPrivate: boolean): void {
  const inside = relative(out, root);
  if (inside === '' || !inside.startsWith('..')) {
    throw new UsageError(`"${out}" holds the book itself. Choose another folder with --out.`);
  }
  const marker = join(out, 'bowbook-manifest.json');
  const isPrivateSite = existsSync(join(out, 'private.txt'));
  if (existsSync(marker) && isPrivate !== isPrivateSite) {
    const kind = isPrivateSite ? 'a private site' : 'a site to publish';
    throw new UsageError(`"${out}" holds ${kind}. Choose another folder with --out.`);
  }
}
