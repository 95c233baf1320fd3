import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readFileSync, rmdirSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { isInside, manifestName, rollForward, stagedFile, writeJournal } from './roll-forward.ts';
import { type Content, type SiteFile, SiteTrouble } from './site-file.ts';
import { lockSite } from './site-lock.ts';

/** A file of the site as a build left it. */
export interface Written {
  /** SHA-256. */
  readonly hash: string;
  /** What it was made from; null where that was its content itself. */
  readonly from: string | null;
  readonly size: number;
  /** Time stamp that the build left on it, compared for sameness only. */
  readonly time: number;
}

/** A site being written. */
export interface OpenSite {
  /** Stages a file, unless it stands in the site already just so. */
  readonly put: (file: SiteFile) => Promise<void>;
  /** Keeps a file that stands in the site as the last build left it, with this hash. */
  readonly keep: (path: string, hash: string) => boolean;
  /** What has been put and kept so far, by path. */
  readonly written: ReadonlyMap<string, Written>;
  /** The bytes of a file that has been put or kept. */
  readonly read: (path: string) => Buffer;
  /** Makes what was put the site, and ends. */
  readonly commit: () => void;
  /** Leaves the last site as it is, and ends. */
  readonly abandon: () => void;
}

/**
 * Opens a site to be written so that a reader never meets half a file, and a failure leaves the last
 * good site. Everything is first written to a staging folder beside the site. When all of it is
 * there a journal is written, and what it says is done: files are moved over the old ones, assets
 * before pages, so that a page never asks for an asset that has not come yet; then files that an
 * earlier build wrote and this one did not are removed. Whatever else lies in the folder stays. A
 * build that was killed after its journal is completed here, and one that was killed before is
 * thrown away. Throws `SiteTrouble` where the folder cannot be written.
 *
 * `last`: what the last build knew of its files, by path; empty where that is not known.
 */
export async function openSite(
  folder: string,
  last: ReadonlyMap<string, Written>,
  onWait: () => void,
): Promise<OpenSite> {
  const staging = join(dirname(folder), `.bowbook-${basename(folder)}`);
  const unlock = await attempt(folder, async () => {
    const release = await lockSite(staging, onWait);
    try {
      mkdirSync(folder, { recursive: true });
      rollForward(staging, folder);
    } catch (error) {
      release();
      throw error;
    }
    return release;
  });
  const written = new Map<string, Written>();
  const staged = new Set<string>();

  /** What the last build knew of a file, if the file is still as it left it. */
  const intact = (path: string): Written | null => {
    const known = last.get(path);
    const now = known && statSync(join(folder, path), { throwIfNoEntry: false });
    return now?.isFile() && now.size === known?.size && now.mtimeMs === known.time ? known : null;
  };
  const keepAs = (path: string, hash: string, from: string | null): void => {
    const { size, mtimeMs } = statSync(join(folder, path));
    written.set(path, { hash, from, size, time: mtimeMs });
  };
  const stage = (path: string, from: string | null, content: Content | { copyOf: string }) => {
    const isCopy = typeof content === 'object' && 'copyOf' in content;
    const hash = isCopy ? hashOf(readSource(content.copyOf)) : hashOf(content);
    if (intact(path)?.hash === hash || fileHash(join(folder, path)) === hash) {
      return keepAs(path, hash, from);
    }
    const target = stagedFile(staging, path);
    mkdirSync(dirname(target), { recursive: true });
    if (isCopy) copyFileSync(content.copyOf, target);
    else writeFileSync(target, content);
    const { size, mtimeMs } = statSync(target);
    written.set(path, { hash, from, size, time: mtimeMs });
    staged.add(path);
  };
  const end = (): void => {
    unlock();
    try {
      rmdirSync(staging);
    } catch {
      // another build waits in it
    }
  };

  return {
    written,
    put: file =>
      attempt(folder, async () => {
        const { path } = file;
        if (!isInside(path)) throw new Error(`not a path inside the site: ${path}`);
        if (written.has(path)) throw new Error(`made twice: ${path}`);
        if ('content' in file) return stage(path, null, file.content);
        const from = 'from' in file ? file.from : sourceStamp(file.copyOf);
        const known = intact(path);
        if (known?.from === from) written.set(path, known);
        else stage(path, from, 'make' in file ? await file.make() : { copyOf: file.copyOf });
      }),
    keep(path, hash) {
      const known = intact(path);
      if (known?.hash !== hash) return false;
      written.set(path, known);
      return true;
    },
    read: path => readFileSync(staged.has(path) ? stagedFile(staging, path) : join(folder, path)),
    commit() {
      try {
        const isPage = (path: string): number => (path.endsWith('.html') ? 1 : 0);
        writeJournal(staging, {
          moves: [...staged].sort((a, b) => isPage(a) - isPage(b)),
          removals: readManifest(folder).filter(path => !written.has(path)),
          manifest: manifestText(written),
        });
        rollForward(staging, folder);
      } catch (error) {
        throw trouble(error, folder);
      } finally {
        end();
      }
    },
    abandon() {
      try {
        rollForward(staging, folder); // with no journal written, this throws away what was staged
      } catch {
        // what cannot be thrown away now is by the next build
      } finally {
        end();
      }
    },
  };
}

function manifestText(written: ReadonlyMap<string, Written>): string {
  const files = [...written].map(([path, { hash }]) => [path, hash] as const);
  const sorted = files.sort(([a], [b]) => (a < b ? -1 : 1));
  return `${JSON.stringify({ bowbook: 1, files: Object.fromEntries(sorted) }, null, 1)}\n`;
}

function readManifest(folder: string): readonly string[] {
  try {
    const read: unknown = JSON.parse(readFileSync(join(folder, manifestName), 'utf8'));
    return Object.keys((read as { files?: object }).files ?? {});
  } catch {
    return []; // none yet, or torn: nothing is known to be ours, so nothing is removed
  }
}

const hashOf = (content: Content): string => createHash('sha256').update(content).digest('hex');

function fileHash(path: string): string | null {
  try {
    return hashOf(readFileSync(path));
  } catch {
    return null; // not there, a folder, or not to be read: it is written anew
  }
}

/** Tells one state of a file to copy from another, without reading it. */
function sourceStamp(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) throw new SiteTrouble('source-gone', path, 'ENOENT');
  return `${path} ${stats.size} ${stats.mtimeMs}`;
}

function readSource(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new SiteTrouble('source-gone', path, (error as NodeJS.ErrnoException).code ?? '');
  }
}

async function attempt<T>(folder: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw trouble(error, folder);
  }
}

/** What the system refuses is trouble with the folder; all else is a defect of ours. */
function trouble(error: unknown, folder: string): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  const refused =
    /^(?:EACCES|EPERM|EROFS|ENOSPC|EDQUOT|EIO|ENOTDIR|EISDIR|EEXIST|ENOTEMPTY|EMFILE)$/;
  if (error instanceof SiteTrouble || code === undefined || !refused.test(code)) return error;
  return new SiteTrouble('site-unwritable', folder, code);
}
