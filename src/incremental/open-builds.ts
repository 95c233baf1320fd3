import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { packageRoot } from '../pages/package-root.ts';
import type { TuneNote } from '../pipeline/make-tune.ts';
import type { Book } from '../read/book.ts';
import { readMemo } from '../read/read-memo.ts';
import { tuneMaker } from '../workers/tune-maker.ts';
import { buildOnce } from './build-once.ts';
import { knownLedger, type Ledger } from './ledger.ts';
import { cacheKey, openCache } from './open-cache.ts';
import { programHash } from './program-hash.ts';
import { tuneOfEntry } from './tune-cache.ts';

/** What a build made and said. `pages` is 0 and nothing was written where `failed`. */
export interface BuildResult {
  readonly book: Book;
  readonly tunes: readonly TuneNote[];
  readonly problems: readonly Problem[];
  readonly failed: boolean;
  readonly pages: number;
}

/** Told how far the work is: tunes done of all; `wait`: another build is writing the same site. */
export type Progress = (step: 'study' | 'tunes' | 'wait', done: number, all: number) => void;

export interface BuildOptions {
  readonly root: string;
  readonly out: string;
  /** Shows the teacher's private notes, marked. Such a site is never to be published. */
  readonly isPrivate: boolean;
  readonly progress: Progress;
  /** Leaves out what takes longest, the PDFs and the zip: for a look, not to publish. */
  readonly isQuick?: boolean;
  /** Builds unfinished pages too, marked. Such a site is never to be published. */
  readonly withDrafts?: boolean;
  /** Folder for what the next build may take over; without one nothing is kept. */
  readonly cache?: string;
  /** What the site is known by in that folder, where `out` is another at each run. */
  readonly knownAs?: string;
}

/** Builds of one book that follow one another and hold in memory what has not changed. */
export interface Builds {
  readonly build: () => Promise<BuildResult>;
  readonly close: () => Promise<void>;
}

/** Milliseconds after a build at which it is kept for a later run: a page that waits comes first. */
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
  const cache = openCache(folder);
  const maker = tuneMaker(cache);
  const program = programHash(packageRoot());
  const ledgerName = `ledger-${cacheKey(options.knownAs ?? options.out)}`;
  let ledger: Ledger = knownLedger(cache.read(ledgerName), program) ?? {
    program,
    book: null,
    isQuick: false,
    pages: 0,
    notes: new Map(),
    files: new Map(),
    pageSums: new Map(),
    blockSums: new Map(),
    read: readMemo(),
  };
  let isSaved = true;
  let saving: NodeJS.Timeout | undefined;
  const save = (): void => {
    clearTimeout(saving);
    if (isSaved) return;
    isSaved = true;
    cache.write(ledgerName, ledger, true);
    cache.keepOnly(name => name.startsWith('ledger-') || ledger.notes.has(tuneOfEntry(name)));
  };
  return {
    async build() {
      clearTimeout(saving); // it would sweep away what this build makes
      try {
        const { result, left } = await buildOnce(options, { program, maker }, ledger);
        if (left !== ledger) isSaved = false;
        ledger = left;
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
