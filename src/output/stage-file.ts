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

/** Absolute paths of a site's folder and its staging folder. Plain data, which threads can be sent. */
export interface SitePlace {
  readonly folder: string;
  readonly staging: string;
}

/** A staged file, or one that the site already had with the same content. */
export interface StagedFile {
  /** SHA-256. */
  readonly hash: string;
  readonly size: number;
  /** Modification time in milliseconds, which a move into the site keeps. */
  readonly time: number;
  /** It is in the staging folder; false where the site has the same. */
  readonly isNew: boolean;
}

/**
 * Writes a file into the staging folder, unless the site has the same. Any thread may call it while the
 * site is open, each for files of its own. `standing` is the hash of the file in the site, where that
 * is known without reading it. Throws `SiteError` where a file to copy is gone.
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

/** Calls `write`, and once more after making the folder if it was missing: most files find it there. */
function inFolder(folder: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    mkdirSync(folder, { recursive: true });
    write();
  }
}

/** SHA-256 of a file; null where there is none that can be read. */
function fileHash(path: string): string | null {
  if (!existsSync(path)) return null; // faster than catching the error
  try {
    return hashOf(readFileSync(path));
  } catch {
    return null; // a folder, or not readable: the file is written again
  }
}

function readSource(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new SiteError('source-gone', path, (error as NodeJS.ErrnoException).code ?? '');
  }
}
