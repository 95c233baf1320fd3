import { spawnSync } from 'node:child_process';
import fs, { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { type OpenSite, openSite } from '../../src/output/open-site.ts';
import { folderFiles } from './folder-files.ts';
import { writeSmallBook } from './small-book.ts';

const work = mkdtempSync(join(tmpdir(), 'bowbook-faults-'));
const site = join(work, 'site');
const open = (onWait = () => {}): Promise<OpenSite> => openSite(site, new Map(), onWait);
const write = async (words: string): Promise<void> => {
  const opened = await open();
  try {
    await opened.put({ path: 'index.html', content: words });
    await opened.put({ path: 'assets/book.css', content: words });
  } catch (error) {
    opened.abandon();
    throw error;
  }
  opened.commit();
};
const shown = (): string => readFileSync(join(site, 'index.html'), 'utf8');

beforeEach(async () => {
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work);
  await write('the last good site');
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('two builds at once', () => {
  it('follow one another, and the second says that it waits', async () => {
    const first = await open();
    let waits = 0;
    const second = open(() => waits++);
    await expect.poll(() => waits).toBe(1);
    await first.put({ path: 'index.html', content: 'first' });
    first.commit();
    const opened = await second;
    expect(shown()).toBe('first');
    await opened.put({ path: 'index.html', content: 'second' });
    opened.commit();
    expect(shown()).toBe('second');
    expect(waits).toBe(1);
  });

  it('are told from one that was killed and left its lock', async () => {
    const dead = spawnSync(process.execPath, ['-e', '0']).pid;
    mkdirSync(join(work, '.bowbook-site'));
    writeFileSync(
      join(work, '.bowbook-site', 'lock'),
      JSON.stringify({ pid: dead, began: '1', by: 'killed' }),
    );
    let waits = 0;
    (await open(() => waits++)).abandon();
    expect(waits).toBe(0);
  });

  // Only Linux tells when a process began.
  it('are told from a lock whose number another process has since been given', async context => {
    context.skip(process.platform !== 'linux', 'skipped: this is not Linux');
    mkdirSync(join(work, '.bowbook-site'));
    writeFileSync(
      join(work, '.bowbook-site', 'lock'),
      JSON.stringify({ pid: process.pid, began: 'long ago', by: 'killed' }),
    );
    (await open(() => expect.unreachable())).abandon();
  });
});

describe('a disk that refuses', () => {
  /** Makes the n-th call of a function of the file system fail as a full disk does. */
  function fillDisk(name: 'writeFileSync' | 'mkdirSync', nth: number): () => void {
    const real = fs[name] as (...args: unknown[]) => unknown;
    let calls = 0;
    const failing = (...args: unknown[]): unknown => {
      if (++calls >= nth) throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
      return real(...args);
    };
    Object.assign(fs, { [name]: failing });
    syncBuiltinESMExports();
    return () => {
      Object.assign(fs, { [name]: real });
      syncBuiltinESMExports();
    };
  }

  it.each([1, 2, 3, 4, 5])(
    'at write %i leaves the last good site whole, and is named',
    async nth => {
      const before = folderFiles(site);
      const restore = fillDisk('writeFileSync', nth);
      let trouble: unknown = null;
      try {
        await write('the new site');
      } catch (error) {
        trouble = error;
      } finally {
        restore();
      }
      expect(trouble).toMatchObject({ rule: 'site-unwritable', message: 'ENOSPC', path: site });
      if (nth < 5) expect(folderFiles(site)).toEqual(before);
      await write('the newest site');
      expect(shown()).toBe('the newest site');
      expect(readFileSync(join(site, 'assets/book.css'), 'utf8')).toBe('the newest site');
    },
  );

  it('is a problem of the build, not a crash', async () => {
    const book = join(work, 'book');
    writeSmallBook(book, 'before');
    writeFileSync(join(work, 'file'), '');
    const out = join(work, 'file', 'site');
    const result = await buildSite({ root: book, out, isPrivate: false, progress: () => {} });
    expect(result.failed).toBe(true);
    expect(result.problems.map(p => p.rule)).toContain('site-unwritable');
  });
});

describe('a cache that cannot be kept', () => {
  it('costs time and nothing else', async () => {
    const book = join(work, 'book');
    writeSmallBook(book, 'before');
    writeFileSync(join(work, 'file'), '');
    const options = { root: book, isPrivate: false, isQuick: true, progress: () => {} };
    const uncached = await buildSite({ ...options, out: site, cache: join(work, 'file', 'cache') });
    expect(uncached.failed).toBe(false);
    await buildSite({ ...options, out: join(work, 'clean') });
    expect(folderFiles(site)).toEqual(folderFiles(join(work, 'clean')));
  });
});

describe('a file to copy that goes away', () => {
  it('is named, and the last good site stays', async () => {
    const opened = await open();
    await opened.put({ path: 'index.html', content: 'new' });
    const gone = join(work, 'gone.mp3');
    await expect(opened.put({ path: 'media/gone.mp3', copyOf: gone })).rejects.toMatchObject({
      rule: 'source-gone',
      path: gone,
    });
    opened.abandon();
    expect(shown()).toBe('the last good site');
  });
});

it('leaves a manifest that says the same alone, and writes one again that was lost', async () => {
  const manifest = join(site, 'bowbook-manifest.json');
  const [text, time] = [readFileSync(manifest, 'utf8'), fs.statSync(manifest).mtimeMs];
  await write('the last good site');
  expect(fs.statSync(manifest).mtimeMs).toBe(time);
  rmSync(manifest);
  await write('the last good site');
  expect(readFileSync(manifest, 'utf8')).toBe(text);
  writeFileSync(manifest, text.slice(0, 40));
  await write('the last good site');
  expect(readFileSync(manifest, 'utf8')).toBe(text);
});

it('never leaves the site’s folder', async () => {
  const opened = await open();
  for (const path of ['../out.html', '/etc/out', 'a/../../out', 'a\\b', '..']) {
    await expect(opened.put({ path, content: '' })).rejects.toThrow('not a path inside the site');
  }
  opened.abandon();
});

it('removes nothing outside the folder, whatever a manifest names', async () => {
  writeFileSync(join(work, 'precious'), 'mine');
  writeFileSync(
    join(site, 'bowbook-manifest.json'),
    JSON.stringify({ bowbook: 1, files: { '../precious': 'x', 'index.html': 'y' } }),
  );
  await write('new');
  expect(readFileSync(join(work, 'precious'), 'utf8')).toBe('mine');
});
