import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { exportTunes } from '../../src/app/export-book.ts';
import { importTunes } from '../../src/app/import-tunes.ts';
import { drawTune } from '../../src/pipeline/draw-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { print } from '../../src/pipeline/print-pdf.ts';
import { type ExampleFile, readRulePage } from './rule-page.ts';

const rules = join(import.meta.dirname, '../../docs/rules');

/** The book that every example is laid over, as its page `README.md` shows it. */
const standingBook = readRulePage(readFileSync(join(rules, 'README.md'), 'utf8')).files;

/**
 * What is said of one of a page's two books, written into a folder of its own. Rules named
 * `import-…` are asked of an import of its collections, rules named `export-…` of an export, rules
 * named `print-…` of the printed book, all others of `check`. Places are named from the folder.
 */
export async function tryExample(
  rule: string,
  files: readonly ExampleFile[],
  book: 'wrong' | 'right',
): Promise<readonly Problem[]> {
  const root = mkdtempSync(join(tmpdir(), 'bowbook-rule-'));
  try {
    const its = files.filter(f => f.book === book || f.book === 'both');
    const below = rule === 'settings-missing' ? [] : standingBook;
    for (const { path, text } of [...below, ...its]) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      // A collection may be in an older encoding than the page that shows it.
      writeFileSync(join(root, path), text, path.endsWith('.latin1.abc') ? 'latin1' : 'utf8');
    }
    const collections = its.map(f => join(root, f.path)).filter(path => path.endsWith('.abc'));
    return (await asked(rule, root, collections)).map(p => fromFolder(p, root));
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

async function asked(
  rule: string,
  root: string,
  files: readonly string[],
): Promise<readonly Problem[]> {
  if (rule.startsWith('import-')) {
    const options = { type: null, rights: null, learnedFrom: null, dryRun: false };
    return (await importTunes({ root, files, ...options })).problems;
  }
  if (rule.startsWith('export-')) return (await exportTunes(root, [], ['abc'], quiet)).problems;
  const { book, tunes, problems } = await studyBook(root, quiet);
  if (!rule.startsWith('print-')) return problems;
  const words = wordsFor(book.settings.language, book.settings.noteNames);
  const drawn = new Map(tunes.map(tune => [tune.block.id, drawTune(tune, words).built]));
  return print(book, drawn, {}).problems;
}

const quiet = (): void => {};

function fromFolder(p: Problem, root: string): Problem {
  if (!p.place?.file.startsWith(`${root}/`)) return p;
  return { ...p, place: { ...p.place, file: p.place.file.slice(root.length + 1) } };
}
