import { mkdirSync, readFileSync, rmdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { manifestName, manifestText, pathsIn, readManifest } from './manifest.ts';
import { isInside, rollForward, stagedFile, writeJournal } from './roll-forward.ts';
import { asSiteError, SiteError, withSiteErrors } from './site-error.ts';
import type { SiteFile } from './site-file.ts';
import { lockSite } from './site-lock.ts';
import { type SitePlace, type StagedFile, stageFile } from './stage-file.ts';

/** A file of the site as a build left it. */
export interface WrittenFile {
  /** SHA-256. */
  readonly hash: string;
  /** Hash of what it was made from; null where only its content is known. */
  readonly inputHash: string | null;
  readonly size: number;
  /** Time stamp that the build left on it, compared for sameness only. */
  readonly time: number;
}

/** A file of the site, and what it is made from. */
export interface FileInput {
  readonly path: string;
  /** null: only its content is known. */
  readonly inputHash: string | null;
}

/** A site being written. */
export interface OpenSite {
  /** Where other threads may stage files for it. */
  readonly place: SitePlace;
  /** Stages a file, unless it stands in the site already just so. */
  readonly put: (file: SiteFile) => Promise<void>;
  /** Keeps files that stand in the site as the last build left them, made from the same: all or none. */
  readonly keepUnchanged: (files: readonly FileInput[]) => boolean;
  /** What has been put and kept so far, by path. */
  readonly written: ReadonlyMap<string, WrittenFile>;
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
 * thrown away. Throws `SiteError` where the folder cannot be written.
 *
 * `last`: what the last build knew of its files, by path; empty where that is not known.
 */
export async function openSite(
  folder: string,
  last: ReadonlyMap<string, WrittenFile>,
  onWait: () => void,
): Promise<OpenSite> {
  const staging = join(dirname(folder), `.bowbook-${basename(folder)}`);
  const place = { folder, staging };
  const unlock = await withSiteErrors(folder, async () => {
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
  const written = new Map<string, WrittenFile>();
  const staged = new Set<string>();

  /**
   * What the last build knew of a file, if the file is still as it left it. Asked of every file in each
   * build, and `join` would take half as long again.
   */
  const intact = (path: string): WrittenFile | null => {
    const known = last.get(path);
    const now = known && statSync(`${folder}/${path}`, { throwIfNoEntry: false });
    return now?.isFile() && now.size === known?.size && now.mtimeMs === known.time ? known : null;
  };
  const add = (
    path: string,
    inputHash: string | null,
    { hash, size, time, isNew }: StagedFile,
  ): void => {
    written.set(path, { hash, inputHash, size, time });
    if (isNew) staged.add(path);
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
    place,
    written,
    put: file =>
      withSiteErrors(folder, async () => {
        const { path } = file;
        if (!isInside(path)) throw new Error(`not a path inside the site: ${path}`);
        if (written.has(path)) throw new Error(`made twice: ${path}`);
        if ('staged' in file) return add(path, file.inputHash, file.staged);
        const known = intact(path);
        const inputHash = inputHashOf(file);
        if (inputHash !== null && known?.inputHash === inputHash) {
          return void written.set(path, known);
        }
        const content =
          'make' in file ? await file.make() : 'content' in file ? file.content : file;
        add(path, inputHash, stageFile(place, path, content, known?.hash));
      }),
    keepUnchanged(files) {
      const areKept = files.every(({ path, inputHash }) => intact(path)?.inputHash === inputHash);
      for (const { path } of areKept ? files : []) {
        const known = last.get(path);
        if (known) written.set(path, known);
      }
      return areKept;
    },
    read: path => readFileSync(staged.has(path) ? stagedFile(staging, path) : join(folder, path)),
    commit() {
      try {
        const [standing, manifest] = [readManifest(folder), manifestText(written)];
        if (staged.size > 0 || manifest !== standing) {
          const isPage = (path: string): number => (path.endsWith('.html') ? 1 : 0);
          stageFile(place, manifestName, manifest);
          writeJournal(staging, {
            moves: [...staged].sort((a, b) => isPage(a) - isPage(b)),
            removals: pathsIn(standing).filter(path => !written.has(path)),
          });
        }
        rollForward(staging, folder);
      } catch (error) {
        throw asSiteError(error, folder);
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

/** Hash of what a file is made from; null where only its content is known. */
function inputHashOf(file: Exclude<SiteFile, { staged: StagedFile }>): string | null {
  if ('content' in file) return null;
  return 'inputHash' in file ? file.inputHash : sourceStamp(file.copyOf);
}

/** Path, size and time stamp of a file to copy: the same while it is not changed. */
function sourceStamp(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) throw new SiteError('source-gone', path, 'ENOENT');
  return `${path} ${stats.size} ${stats.mtimeMs}`;
}
