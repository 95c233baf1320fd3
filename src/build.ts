import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { type Problem, problem } from '../shared/problem.ts';
import { type BookFilesInput, plainFiles, wholeFiles } from './book-files.ts';
import { knownLedger, type Ledger } from './cache/ledger.ts';
import { cacheKey, openCache } from './cache/open-cache.ts';
import { programHash } from './cache/program-hash.ts';
import { tuneOfEntry } from './cache/tune-cache.ts';
import type { TuneNote } from './make-tune.ts';
import { type OpenSite, openSite } from './output/open-site.ts';
import type { SiteFile } from './output/site-file.ts';
import { SiteTrouble } from './output/site-trouble.ts';
import { pageMakers } from './page-makers.ts';
import { pageTurns } from './page-turns.ts';
import { planPages } from './pages/make-pages.ts';
import { packageRoot } from './pages/package-root.ts';
import type { TuneCard } from './pages/tune-card.ts';
import type { Book } from './read/book.ts';
import { readBook } from './read/read-book.ts';
import { readMemo } from './read/read-memo.ts';
import { type TuneMaker, tuneMaker } from './tune-maker.ts';
import { tuneShelf } from './tune-shelf.ts';
import { tuneTasks } from './tune-tasks.ts';

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
    notes: new Map(),
    files: new Map(),
    read: readMemo(),
  };
  let isSaved = true;
  let saving: NodeJS.Timeout | undefined;
  const save = (): void => {
    clearTimeout(saving);
    if (isSaved) return;
    isSaved = true;
    cache.write(ledgerName, ledger);
    cache.keepOnly(name => name.startsWith('ledger-') || ledger.notes.has(tuneOfEntry(name)));
  };
  return {
    async build() {
      clearTimeout(saving); // it would sweep away what this build makes
      try {
        const { result, left } = await buildOnce(options, program, maker, ledger);
        if (left === null) return result;
        ledger = left;
        isSaved = false;
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

/**
 * The whole pipeline: Markdown → book → tunes → studies → scores → pages → site. Problems are
 * gathered to the end; with an error among them nothing is written and the last site stays.
 */
async function buildOnce(
  { root, out, isPrivate, isQuick = false, withDrafts = false, progress }: BuildOptions,
  program: string,
  maker: TuneMaker,
  ledger: Ledger,
): Promise<{ readonly result: BuildResult; readonly left: Ledger | null }> {
  const book = await readBook(root, { drafts: withDrafts, memo: ledger.read });
  const problems = [...book.problems];
  const notes: TuneNote[] = [];
  const end = (pages: number, left: Ledger | null = null) => {
    const failed = problems.some(isError);
    return { result: { book, tunes: notes, problems, failed, pages: failed ? 0 : pages }, left };
  };
  if (problems.some(isError)) return end(0);

  const cards = new Map<string, TuneCard>();
  const makers = pageMakers(book, isPrivate);
  const plans = planPages({ book, cards, isPrivate, ...makers });
  const tasks = tuneTasks(book, { plans, isPrivate, program });
  const tunes = tuneShelf(tasks, { maker, known: ledger.notes, makePage: makers.make });
  const turns = pageTurns(plans, { tunes, program, makers });
  try {
    const site = await openSite(out, ledger.files, () => progress('wait', 0, 0));
    try {
      const say = (found: readonly Problem[]): void => void problems.push(...found);
      const input: BookFilesInput = { book, isPrivate, isQuick, cards, tunes, site, program, say };
      await putAll(site, plainFiles(input));
      await putAll(site, turns.first);
      for await (const { note, files } of tunes.placed(site)) {
        progress('tunes', notes.length, tasks.length);
        notes.push(note);
        problems.push(...note.problems);
        cards.set(note.id, note.card);
        await putAll(site, files);
        await putAll(site, turns.after(note.id));
      }
      progress('tunes', tasks.length, tasks.length);
      await putAll(site, turns.last());
      await putAll(site, wholeFiles(input));
    } catch (error) {
      site.abandon();
      throw error;
    }
    if (problems.some(isError)) {
      site.abandon();
      return end(0);
    }
    site.commit();
    const byKey = new Map(notes.map((note, i) => [tasks[i]?.key ?? '', note] as const));
    return end(plans.length, { program, notes: byKey, files: site.written, read: ledger.read });
  } catch (error) {
    if (!(error instanceof SiteTrouble)) throw error;
    problems.push(troubleOf(error, root));
    return end(0);
  }
}

const isError = ({ severity }: Problem): boolean => severity === 'error';

async function putAll(site: OpenSite, files: Iterable<SiteFile>): Promise<void> {
  for (const file of files) await site.put(file);
}

/** What the disk refused, as a problem of the book's. */
const troubleOf = ({ rule, path, message }: SiteTrouble, root: string): Problem =>
  problem(rule, 'error', null, {
    actual: relative(root, path).startsWith('..') ? path : relative(root, path),
    facts: { reason: message },
  });
