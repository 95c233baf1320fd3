import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildSite } from '../../src/build.ts';
import { folderFiles } from '../output/folder-files.ts';

/**
 * A book of so many tunes that the bundled command makes them in worker threads. What it writes is
 * held to what is made here, unbundled and in one thread.
 */
vi.setConfig({ testTimeout: 300_000 });

const project = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-workers-'));
const book = join(work, 'book');
const out = join(work, 'site');
const write = (path: string, text: string): void => writeFileSync(join(book, path), text);

/** The demo book's tunes, three times over, and a lesson to each that shows it beside another. */
function writeBook(): void {
  for (const folder of ['tunes', 'lessons', 'pages'])
    mkdirSync(join(book, folder), { recursive: true });
  write('bowbook.yaml', 'title: Tunes over and over\nrights: own\npdf: none\n');
  const folder = join(project, 'content/tunes');
  const fences = readdirSync(folder).flatMap(
    name => readFileSync(join(folder, name), 'utf8').match(/^```abc\n[\s\S]*?^```$/gm) ?? [],
  );
  const tunes = [...fences, ...fences, ...fences];
  for (const [i, fence] of tunes.entries()) {
    write(`tunes/t-${i}.md`, `:::tune{#t-${i}}\n${fence.replace(/^T:/m, `T:${i} `)}\n:::\n`);
    const other = (i * 7 + 3) % tunes.length;
    write(
      `lessons/2030-01-${String((i % 28) + 1).padStart(2, '0')}-${i}.md`,
      `---\ntitle: Evening ${i}\n---\n\n::tune{of=t-${i}}\n${i % 3 === 0 ? `\n::map{of=t-${other}}\n` : ''}`,
    );
  }
}

async function here(): Promise<ReadonlyMap<string, string>> {
  const clean = join(work, 'clean');
  rmSync(clean, { recursive: true, force: true });
  const { failed } = await buildSite({
    root: book,
    out: clean,
    isPrivate: false,
    progress: () => {},
  });
  expect(failed).toBe(false);
  return folderFiles(clean);
}

function byCommand(): ReadonlyMap<string, string> {
  const args = ['dist/cli.js', 'build', book, '--out', out, '--cache', join(work, 'cache')];
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: project, encoding: 'utf8' });
  expect(status, stderr).toBe(0);
  return folderFiles(out);
}

beforeAll(writeBook);
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('what worker threads make is what one thread makes', () => {
  it.each([
    ['at first', () => {}],
    [
      'where every page has another page to name',
      () => write('pages/where.md', '---\ntitle: Where\n---\n\nHere.\n'),
    ],
    ['where the site is gone and the cache is there', () => rmSync(out, { recursive: true })],
    [
      'where one tune has changed',
      () =>
        write(
          'tunes/t-5.md',
          readFileSync(join(book, 'tunes/t-6.md'), 'utf8').replaceAll('t-6', 't-5'),
        ),
    ],
    [
      'where one lesson has changed',
      () => appendFileSync(join(book, 'lessons/2030-01-04-3.md'), '\nAnd on.\n'),
    ],
    ['where the files of some tunes are gone', () => rmSync(join(out, 'tunes/t-7.mid'))],
  ])('%s', async (_, change) => {
    change();
    expect(byCommand()).toEqual(await here());
  });
});
