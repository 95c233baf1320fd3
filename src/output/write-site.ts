import { createHash, randomBytes } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, posix } from 'node:path';

/** A file of the site: its text or bytes, or a file to copy. */
export type SiteFile =
  | { readonly path: string; readonly content: string | Uint8Array }
  | { readonly path: string; readonly copyOf: string };

/** Lists what Bowbook wrote in this folder, so that it never touches what it did not write. */
const manifestName = 'bowbook-manifest.json';

/**
 * Writes a site so that a reader never meets half a file, and a failure leaves the last good site.
 *
 * Everything is first written to a staging folder beside the site. Only when all of it is there
 * are the files moved over the old ones, assets before pages, so that a page never asks for an
 * asset that has not come yet. Last, files that an earlier build wrote and this one did not are
 * removed, by the manifest: whatever else lies in the folder stays. Files whose bytes are as they
 * were keep their time stamps.
 */
export function writeSite(folder: string, files: readonly SiteFile[]): void {
  mkdirSync(folder, { recursive: true });
  const staging = join(dirname(folder), `.bowbook-${randomBytes(6).toString('hex')}`);
  try {
    const hashes = new Map<string, string>();
    const changed = files.filter(file => {
      const bytes = 'copyOf' in file ? readFileSync(file.copyOf) : Buffer.from(file.content);
      const hash = createHash('sha256').update(bytes).digest('hex');
      hashes.set(checkedPath(file.path), hash);
      if (hashOf(join(folder, file.path)) === hash) return false;
      const staged = join(staging, file.path);
      mkdirSync(dirname(staged), { recursive: true });
      if ('copyOf' in file) copyFileSync(file.copyOf, staged);
      else writeFileSync(staged, bytes);
      return true;
    });
    const earlier = readManifest(folder);
    const isPage = (file: SiteFile): number => (file.path.endsWith('.html') ? 1 : 0);
    for (const file of changed.toSorted((a, b) => isPage(a) - isPage(b))) {
      const target = join(folder, file.path);
      mkdirSync(dirname(target), { recursive: true });
      renameSync(join(staging, file.path), target);
    }
    for (const path of earlier.filter(p => !hashes.has(p))) removeFile(folder, path);
    const manifest = Object.fromEntries([...hashes].toSorted(([a], [b]) => (a < b ? -1 : 1)));
    const staged = join(folder, `.${manifestName}`);
    writeFileSync(staged, `${JSON.stringify({ bowbook: 1, files: manifest }, null, 1)}\n`);
    renameSync(staged, join(folder, manifestName));
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
}

/** Throws where a path would leave the site: a defect of ours, never of a book. */
function checkedPath(path: string): string {
  const normal = posix.normalize(path);
  if (normal !== path || path.startsWith('/') || path.startsWith('..') || path.includes('\\')) {
    throw new Error(`not a path inside the site: ${path}`);
  }
  return path;
}

function hashOf(path: string): string | null {
  if (!existsSync(path)) return null;
  try {
    return createHash('sha256').update(readFileSync(path)).digest('hex');
  } catch {
    return null; // a folder stands there, or it cannot be read: it is written anew
  }
}

function readManifest(folder: string): readonly string[] {
  try {
    const read: unknown = JSON.parse(readFileSync(join(folder, manifestName), 'utf8'));
    const files = (read as { files?: Record<string, string> }).files ?? {};
    return Object.keys(files).filter(p => posix.normalize(p) === p && !/^(\/|\.\.)/.test(p));
  } catch {
    return []; // none yet, or torn: nothing is known to be ours, so nothing is removed
  }
}

function removeFile(folder: string, path: string): void {
  rmSync(join(folder, path), { force: true });
  for (let at = posix.dirname(path); at !== '.'; at = posix.dirname(at)) {
    try {
      rmdirSync(join(folder, at));
    } catch {
      return; // not empty: it is still in use
    }
  }
}
