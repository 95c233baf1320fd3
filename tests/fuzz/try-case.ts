import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { explainFile } from '../../src/app/explain.ts';
import { importTunes } from '../../src/app/import-tunes.ts';
import { studyJson } from '../../src/export/study-json.ts';
import { studyText } from '../../src/export/study-text.ts';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { makeTune, studyBook } from '../../src/pipeline/pipeline.ts';
import { type StudiedTune, studyJob } from '../../src/pipeline/study-job.ts';
import { tuneJobs } from '../../src/pipeline/tune-job.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { formatProblems } from '../../src/report/format-problems.ts';
import type { Case } from './make-case.ts';

/**
 * Puts a case through what the commands `check`, `explain`, `import` and `build` do. Throws where
 * one of them throws, where a problem has no words or no place in its file, where a tune was given
 * neither a study nor a problem, or where a build that did not fail left no front page.
 */
export async function tryCase(tried: Case): Promise<void> {
  const isWhole = tried.number % 20 === 19;
  if (!isWhole && tried.kind !== 'import') return tryInMemory(tried);
  const root = mkdtempSync(join(tmpdir(), 'bowbook-fuzz-'));
  try {
    for (const [path, content] of tried.files) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), content);
    }
    if (tried.kind === 'import') await tryImport(root);
    if (tried.kind === 'abc') await tryExplain(root);
    await tryBook(root, isWhole);
    if (tried.build !== 'none') await tryBuild(root, tried.build === 'quick');
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

/** What `check` and `explain` do once a book's files are read: nineteen cases of twenty end here. */
function tryInMemory({ files, number }: Case): void {
  const texts = new Map(
    [...files].flatMap(([path, content]) =>
      /\.(?:md|yaml)$/.test(path) ? [[path, String(content)] as const] : [],
    ),
  );
  const media = [...files.keys()].filter(path => path.startsWith('media/'));
  const book = bookOf('book', { texts, media });
  const tunes = tuneJobs(book, false).map(studyJob);
  const problems = [...book.problems, ...tunes.flatMap(t => t.problems)];
  checkPlaced(problems, file => texts.get(file) ?? null);
  checkStudied(tunes);
  if (number % 3 > 0) return;
  const studies = tunes.flatMap(t => t.study ?? []);
  JSON.stringify(studyJson(studies, problems));
  studyText(studies, new Map());
}

/** As `check` does; and, where asked, each tune's drawings and downloads. */
async function tryBook(root: string, isDrawn: boolean): Promise<void> {
  const { book, tunes, problems } = await studyBook(root, () => {});
  checkProblems(problems, root);
  checkStudied(tunes);
  if (!isDrawn || problems.some(p => p.severity === 'error')) return;
  for (const job of tuneJobs(book, false)) {
    const { summary } = await makeTune({ inputHash: '', job, pages: [], isShared: false });
    checkProblems(summary.problems, root);
  }
}

async function tryExplain(root: string): Promise<void> {
  const file = join(root, 'tried.abc');
  await explainFile(file, { json: true });
  await explainFile(file, { anchor: 'A1-A2', arrive: 'up', level: 'beginner' });
}

async function tryImport(root: string): Promise<void> {
  const files = [join(root, 'tried.abc')];
  const options = { root, files, type: null, rights: 'own', learnedFrom: null } as const;
  const first = await importTunes({ ...options, dryRun: false });
  formatProblems(first.problems, () => null);
  for (const path of first.written) {
    if (!/^tunes\/[^/\\]+\.md$/.test(path)) throw new Error(`written outside tunes/: ${path}`);
  }
  const again = await importTunes({ ...options, dryRun: true });
  if (again.written.length > 0) throw new Error('importing twice wrote twice');
}

async function tryBuild(root: string, isQuick: boolean): Promise<void> {
  const out = join(root, 'site');
  const result = await buildSite({ root, out, isPrivate: false, isQuick, progress: () => {} });
  checkProblems(result.problems, root);
  if (!result.failed && !existsSync(join(out, 'index.html'))) throw new Error('no front page');
}

/** Each tune has a study, or something was said of it. */
function checkStudied(tunes: readonly StudiedTune[]): void {
  const silent = tunes.find(t => t.study === null && t.problems.length === 0);
  if (silent) throw new Error(`the tune ${silent.block.id} has neither a study nor a problem`);
}

function checkProblems(problems: readonly Problem[], root: string): void {
  const texts = new Map<string, string | null>();
  checkPlaced(problems, file => {
    const path = join(root, file);
    if (!texts.has(file)) texts.set(file, existsSync(path) ? readFileSync(path, 'utf8') : null);
    return texts.get(file) ?? null;
  });
}

/** Each problem has words, and a place within its file. */
function checkPlaced(problems: readonly Problem[], read: (file: string) => string | null): void {
  formatProblems(problems, read);
  for (const { rule, place } of problems) {
    if (place === null) continue;
    const lines = (read(place.file) ?? '').split(/\r\n?|\n/).length;
    if (!(place.line >= 1 && place.line <= lines && place.column >= 1)) {
      throw new Error(`${rule} at line ${place.line}:${place.column} of ${lines} of ${place.file}`);
    }
  }
}
