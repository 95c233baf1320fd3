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

/** What is left to do once every file of a site and its manifest are staged; done in this order, the manifest last. */
export interface Journal {
  /** Staged files to move over the site's, assets before pages. */
  readonly moves: readonly string[];
  /** Files of an earlier build that this one has not. */
  readonly removals: readonly string[];
}

const journalName = 'journal.json';
export const stagedFile = (staging: string, path: string): string => join(staging, 'files', path);

/** Writes the journal whole: from here on the staged site counts, whatever happens. */
export function writeJournal(staging: string, journal: Journal): void {
  const body = JSON.stringify(journal);
  const part = join(staging, `.${journalName}`);
  writeFileSync(part, `${sum(body)}\n${body}`, { flush: true });
  renameSync(part, join(staging, journalName));
}

/**
 * Does what the journal says, from wherever an earlier try was stopped: a file is moved in one step,
 * so that it is whole at every instant, old or new, and what is no longer staged has been moved.
 * Then, or where there is no journal, what is left in the staging folder is thrown away.
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

/** Moves a staged file into its place, unless an earlier try has done so. */
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
    return null; // none, or torn: the build before it never said that its site counts
  }
}

/** Whether a path stays inside the site. */
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
