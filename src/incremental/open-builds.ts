import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { packageRoot } from '../pages/package-root.ts';
import { hashOf } from '../pipeline/hash-of.ts';
import type { TuneSummary } from '../pipeline/made-tune.ts';
import type { Progress } from '../pipeline/progress.ts';
import type { Book } from '../read/book.ts';
import { tuneMaker } from '../workers/tune-maker.ts';
import { startThreads } from '../workers/tune-threads.ts';
import { buildBook } from './build-book.ts';
import { stateFrom } from './build-state.ts';
import { openCache } from './open-cache.ts';
import { programHash } from './program-hash.ts';
import { entriesOf, tuneStore } from './tune-store.ts';

/** The result of a build. Where `failed`, nothing was written and `pages` is 0. */
export interface BuildResult {
  readonly book: Book;
  readonly tunes: readonly TuneSummary[];
  readonly problems: readonly Problem[];
  readonly failed: boolean;
  readonly pages: number;
}

export interface BuildOptions {
  readonly root: string;
  readonly out: string;
  /** Shows the teacher's private notes, marked. Such a site must not be published. */
  readonly isPrivate: boolean;
  readonly progress: Progress;
  /** Leaves out the PDFs and the zip, which take longest. */
  readonly isQuick?: boolean;
  /** Builds unfinished pages too, marked. Such a site must not be published. */
  readonly withUnfinished?: boolean;
  /** Folder of the cache; without it nothing is kept for a later run. */
  readonly cache?: string;
  /** Name of the site in the cache, where `out` differs from run to run. */
  readonly knownAs?: string;
}

/** Successive builds of one book, which keep what has not changed in memory. */
export interface Builds {
  /** Builds the book as it is now. Call it again only when the last call has ended. */
  readonly build: () => Promise<BuildResult>;
  /** Writes the cache and ends the threads. */
  readonly close: () => Promise<void>;
}

/** Milliseconds between a build and writing its state to the cache, so that a waiting page comes first. */
const saveAfter = 500;

/** Builds a book once. */
export async function buildSite(options: BuildOptions): Promise<BuildResult> {
  const builds = openBuilds(options);
  try {
    return await builds.build();
  } finally {
    await builds.close();
  }
}

/** Opens a book to be built whenever it has changed, as the live preview does. */
export function openBuilds(options: BuildOptions): Builds {
  const folder = options.cache ?? mkdtempSync(join(tmpdir(), 'bowbook-'));
  const program = programHash(packageRoot());
  const cache = openCache(folder);
  const store = tuneStore(folder, program);
  const maker = tuneMaker(store, () => startThreads({ cache: folder, program }));
  const stateName = `${statePrefix}${hashOf(options.knownAs ?? options.out)}`;
  let state = stateFrom(cache.read(stateName), program);
  let isSaved = true;
  let saving: NodeJS.Timeout | undefined;
  const save = (): void => {
    clearTimeout(saving);
    if (isSaved) return;
    isSaved = true;
    cache.write(stateName, state, true);
    const entries = entriesOf(program, state.site?.tunes.keys() ?? []);
    cache.keepOnly(name => name.startsWith(statePrefix) || entries.has(name));
  };
  return {
    async build() {
      clearTimeout(saving); // saving would delete the new entries of this build from the cache
      try {
        const { result, left } = await buildBook(options, { store, maker }, state);
        if (left.reading !== state.reading || left.site !== state.site) isSaved = false;
        state = left;
        return result;
      } finally {
        saving = setTimeout(save, saveAfter);
      }
    },
    async close() {
      save();
      await maker.close();
      if (options.cache === undefined) rmSync(folder, { recursive: true, force: true });
    },
  };
}

const statePrefix = 'state-';
