import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { buildSite } from '../../src/build.ts';
import { explainFile } from '../../src/explain.ts';
import { importTunes } from '../../src/import-tunes.ts';
import { formatProblems } from '../../src/report/format-problems.ts';
import { studyBook } from '../../src/study-book.ts';
import type { Case } from './make-case.ts';

/**
 * Puts a case through what the commands `check`, `explain`, `import` and `build` do. Throws where
 * one of them throws, where a problem has no words or no place in its file, where a tune was given
 * neither a study nor a problem, or where a build that did not fail left no front page.
 */
export async function tryCase(tried: Case): Promise<void> {
  const root = mkdtempSync(join(tmpdir(), 'bowbook-fuzz-'));
  try {
    for (const [path, content] of tried.files) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), content);
    }
    if (tried.kind === 'import') await tryImport(root);
    if (tried.kind === 'abc') await tryExplain(root);
    await tryBook(root);
    if (tried.build !== 'none') await tryBuild(root, tried.build === 'quick');
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

async function tryBook(root: string): Promise<void> {
  const { tunes, problems } = await studyBook(root, () => {});
  checkProblems(problems, root);
  const silent = tunes.find(t => t.study === null && t.problems.length === 0);
  if (silent) throw new Error(`the tune ${silent.block.id} has neither a study nor a problem`);
}

async function tryExplain(root: string): Promise<void> {
  const file = join(root, 'tried.abc');
  for (const json of [false, true]) await explainFile(file, { json });
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

function checkProblems(problems: readonly Problem[], root: string): void {
  const texts = new Map<string, string | null>();
  const read = (file: string): string | null => {
    const path = join(root, file);
    if (!texts.has(file)) texts.set(file, existsSync(path) ? readFileSync(path, 'utf8') : null);
    return texts.get(file) ?? null;
  };
  formatProblems(problems, read);
  for (const { rule, place } of problems) {
    if (place === null) continue;
    const lines = (read(place.file) ?? '').split(/\r\n?|\n/).length;
    if (!(place.line >= 1 && place.line <= lines && place.column >= 1)) {
      throw new Error(`${rule} at line ${place.line}:${place.column} of ${lines} of ${place.file}`);
    }
  }
}
