import { hash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { manifestName } from './manifest.ts';

/** The steps of a commit, once all files are staged: moves, removals, then the move of the manifest. */
export interface Journal {
  /** Paths of staged files to move into the site, assets before pages. */
  readonly moves: readonly string[];
  /** Paths of files that an earlier build wrote and this one did not. */
  readonly removals: readonly string[];
}

const journalName = 'journal.json';
/** Where a file of the site is staged. */
export const stagedFile = (staging: string, path: string): string => join(staging, 'files', path);

/** Writes the journal in one step. From then on the staged site is the valid one, even after a crash. */
export function writeJournal(staging: string, journal: Journal): void {
  const body = JSON.stringify(journal);
  const part = join(staging, `.${journalName}`);
  writeFileSync(part, `${sum(body)}\n${body}`, { flush: true });
  renameSync(part, join(staging, journalName));
}

/**
 * Carries out the journal, continuing where an earlier attempt stopped. Each file is renamed into place,
 * so that at every instant it is wholly old or wholly new; one that is no longer staged was moved
 * before. Then, or where there is no journal, deletes what is left in the staging folder.
 */
export function rollForward(staging: string, folder: string): void {
  const journal = readJournal(staging);
  if (journal) {
    const folders = new Set<string>();
    for (const path of journal.moves.filter(isInside)) {
      const target = join(folder, path);
      const parent = dirname(target);
      if (!folders.has(parent)) mkdirSync(parent, { recursive: true });
      folders.add(parent);
      move(stagedFile(staging, path), target);
    }
    for (const path of journal.removals.filter(isInside)) removeFile(folder, path);
    move(stagedFile(staging, manifestName), join(folder, manifestName));
    rmSync(join(staging, journalName));
  }
  rmSync(join(staging, `.${journalName}`), { force: true });
  rmSync(join(staging, 'files'), { recursive: true, force: true });
}

/** Moves a staged file to its place, unless an earlier attempt has. An empty folder in its place goes. */
function move(staged: string, target: string): void {
  try {
    renameSync(staged, target);
  } catch (error) {
    if (!existsSync(staged)) return;
    if (!statSync(target, { throwIfNoEntry: false })?.isDirectory()) throw error;
    rmdirSync(target);
    renameSync(staged, target);
  }
}

function readJournal(staging: string): Journal | null {
  try {
    const text = readFileSync(join(staging, journalName), 'utf8');
    const body = text.slice(text.indexOf('\n') + 1);
    return text.startsWith(`${sum(body)}\n`) ? (JSON.parse(body) as Journal) : null;
  } catch {
    return null; // none, or damaged: the build before never committed
  }
}

/** Whether a relative path stays inside the site. */
export const isInside = (path: string): boolean =>
  posix.normalize(path) === path && !/^(?:\/|\.\.(?:\/|$))|\\/.test(path);

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

const sum = (text: string): string => hash('sha256', text);
