import { mkdirSync, readFileSync, rmdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { manifestName, manifestText, pathsIn, readManifest } from './manifest.ts';
import { isInside, rollForward, stagedFile, writeJournal } from './roll-forward.ts';
import { asSiteError, SiteError, withSiteErrors } from './site-error.ts';
import type { SiteFile } from './site-file.ts';
import { lockSite } from './site-lock.ts';
import { type SitePlace, type StagedFile, stageFile } from './stage-file.ts';

/** A file of the site as a build wrote it. */
export interface WrittenFile {
  /** SHA-256. */
  readonly hash: string;
  /** Hash of what it was made from; null where only its content is known. */
  readonly inputHash: string | null;
  readonly size: number;
  /** Modification time in milliseconds; compared for equality only. */
  readonly time: number;
}

/** A file of the site and the hash of its inputs. */
export interface FileInput {
  readonly path: string;
  /** null: only its content is known. */
  readonly inputHash: string | null;
}

/** A site being written. */
export interface OpenSite {
  /** Where other threads may stage files for it. */
  readonly place: SitePlace;
  /** Stages a file, unless the site already has the same. Throws where a path is put twice. */
  readonly put: (file: SiteFile) => Promise<void>;
  /**
   * Keeps all of these files and returns true, if each is in the site as the last build wrote it and has
   * the same input hash; else keeps none and returns false. Reads no file: one `stat` each.
   */
  readonly keepUnchanged: (files: readonly FileInput[]) => boolean;
  /** Files put and kept so far, by path. */
  readonly written: ReadonlyMap<string, WrittenFile>;
  /** The bytes of a file that has been put or kept. */
  readonly read: (path: string) => Buffer;
  /** Replaces the site by what was put and kept, and releases the lock. */
  readonly commit: () => void;
  /** Discards what was put, leaves the site as it was, and releases the lock. */
  readonly abandon: () => void;
}

/**
 * Opens a site for writing, in a way that no reader gets half a file and a failed build leaves the last
 * site intact. Waits while another build has the site open, and calls `onWait` once before.
 *
 * Files are first written to a staging folder beside the site. `commit` then writes a journal and
 * carries it out: it moves the files over the old ones, assets before pages, so that a page never
 * refers to an asset that is not there yet; then it removes the files that an earlier build wrote and
 * this one did not. Other files in the folder stay. A build that was killed after writing its journal
 * is completed here; one that was killed before is discarded. Throws `SiteError` where the folder
 * cannot be written.
 *
 * `last` holds the files of the last build by path; empty where they are not known.
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
   * The last build's record of a file, if size and time of the file are still the same. Called for
   * every file of each build: `join` would make it half as slow again.
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
        rollForward(staging, folder); // without a journal, this discards what was staged
      } catch {
        // the next build discards what cannot be discarded now
      } finally {
        end();
      }
    },
  };
}

/** The hash of a file's inputs; null where only its content is known. */
function inputHashOf(file: Exclude<SiteFile, { staged: StagedFile }>): string | null {
  if ('content' in file) return null;
  return 'inputHash' in file ? file.inputHash : sourceStamp(file.copyOf);
}

/** Path, size and time of a file to copy, which differ when it is changed. Throws where it is gone. */
function sourceStamp(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) throw new SiteError('source-gone', path, 'ENOENT');
  return `${path} ${stats.size} ${stats.mtimeMs}`;
}
