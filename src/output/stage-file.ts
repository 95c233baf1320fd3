import { hash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { stagedFile } from './roll-forward.ts';
import { SiteError } from './site-error.ts';
import type { Content } from './site-file.ts';

/** Where a site stands, and where what is to become of it is written first. Plain data. */
export interface SitePlace {
  readonly folder: string;
  readonly staging: string;
}

/** A file as it was staged, or found to stand in the site already just so. */
export interface StagedFile {
  /** SHA-256. */
  readonly hash: string;
  readonly size: number;
  /** Its time stamp, which it keeps when it is moved into the site. */
  readonly time: number;
  /** It waits in the staging folder. */
  readonly isNew: boolean;
}

/**
 * Writes a file of the site into the staging folder, unless the site has the same. Any thread may,
 * each for files of its own, while the site is open. `standing`: hash of the file in the site,
 * where that is known without reading it.
 */
export function stageFile(
  { folder, staging }: SitePlace,
  path: string,
  content: Content | { readonly copyOf: string },
  standing: string | null = null,
): StagedFile {
  const isCopy = typeof content === 'object' && 'copyOf' in content;
  const bytes = isCopy ? readSource(content.copyOf) : bytesOf(content);
  const hash = hashOf(bytes);
  const there = join(folder, path);
  const isNew = standing !== hash && fileHash(there) !== hash;
  const target = isNew ? stagedFile(staging, path) : there;
  if (isNew) {
    inFolder(dirname(target), () => {
      if (isCopy) copyFileSync(content.copyOf, target);
      else writeFileSync(target, bytes);
    });
  }
  const { size, mtimeMs } = statSync(target);
  return { hash, size, time: mtimeMs, isNew };
}

const bytesOf = (content: Content): Uint8Array =>
  typeof content === 'string' ? Buffer.from(content) : content;

const hashOf = (content: Uint8Array): string => hash('sha256', content);

/** Writes into a folder, which is made where it is missing: a site has few folders and many files. */
function inFolder(folder: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    mkdirSync(folder, { recursive: true });
    write();
  }
}

function fileHash(path: string): string | null {
  if (!existsSync(path)) return null; // what is quicker to ask than to catch
  try {
    return hashOf(readFileSync(path));
  } catch {
    return null; // a folder, or not to be read: it is written anew
  }
}

function readSource(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new SiteError('source-gone', path, (error as NodeJS.ErrnoException).code ?? '');
  }
}
