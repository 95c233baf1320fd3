/** @module-tag slow */
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
import { buildSite } from '../../src/incremental/open-builds.ts';
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

describe('a full disk is told of, whichever threads meet it', () => {
  // The first thread waits, so that the others have failed when it does.
  const inAll = `if (!String(args[0]).endsWith('.mid')) return real(...args);
    if (isMainThread) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 3000);
    refuse();`;
  const preload = (write: string, atOnce = ''): string =>
    `data:text/javascript,${encodeURIComponent(`
      import fs from 'node:fs';
      import { syncBuiltinESMExports } from 'node:module';
      import { isMainThread } from 'node:worker_threads';
      const refuse = () => { throw Object.assign(new Error('no space left'), { code: 'ENOSPC' }); };
      const real = fs.writeFileSync;
      fs.writeFileSync = (...args) => { ${write} };
      syncBuiltinESMExports();
      ${atOnce}`)}`;

  it.each([
    ['all of them', preload(inAll)],
    ['one as it starts', preload('return real(...args);', 'if (!isMainThread) refuse();')],
  ])('%s', (_, import_) => {
    const full = join(work, 'full');
    const args = ['--import', import_, 'dist/cli.js', 'build', book, '--fresh', '--out', full];
    const { status, stderr } = spawnSync(process.execPath, args, {
      cwd: project,
      encoding: 'utf8',
    });
    expect(status, stderr).toBe(1);
    expect(stderr).toContain('site-unwritable');
    expect(stderr).not.toMatch(/^\s+at /m);
    expect(readdirSync(work).filter(name => name.includes('full'))).toEqual(['full']);
    expect(readdirSync(full)).toEqual([]);
  });
});
