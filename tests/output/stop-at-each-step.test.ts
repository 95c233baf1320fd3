/** @module-tag slow */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { folderFiles } from './folder-files.ts';

/** The writing of a site, stopped dead before each of its changes to the disk in turn. */
const work = mkdtempSync(join(tmpdir(), 'bowbook-steps-'));
const script = join(work, 'stopping-build.mjs');
const run = (folder: string, state: string, nth = 0) =>
  spawnSync(process.execPath, [script, folder, state, `${nth}`], { encoding: 'utf8' });

beforeAll(async () => {
  await build({
    entryPoints: [join(import.meta.dirname, 'stopping-build.ts')],
    outfile: script,
    bundle: true,
    platform: 'node',
    format: 'esm',
  });
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

it('leaves whole files at every step, and the next build is a clean one', () => {
  const clean = new Map(
    ['before', 'after'].map(state => {
      const folder = join(work, state);
      expect(run(folder, state).status).toBe(0);
      return [state, folderFiles(folder)] as const;
    }),
  );
  const site = join(work, 'site');
  run(site, 'before');
  writeFileSync(join(site, 'tunes', 'mine.html'), 'mine');
  const steps = Number(run(site, 'after').stdout);
  expect(steps).toBeGreaterThan(15);
  let stopped = 0;
  for (let nth = 1; nth <= steps + 1; nth++) {
    run(site, 'before');
    if (run(site, 'after', nth).signal === 'SIGKILL') stopped++;
    const found = folderFiles(site);
    for (const [path, hash] of found) {
      if (path === 'tunes/mine.html') continue;
      const whole = [...clean.values()].map(files => files.get(path));
      expect(whole, `${path}, stopped at change ${nth}`).toContain(hash);
    }
    expect(found.has('index.html') && found.has('assets/book.css')).toBe(true);
    // A page never asks for an asset that has not come yet.
    if (found.get('index.html') === clean.get('after')?.get('index.html')) {
      expect(found.get('assets/book.css')).toBe(clean.get('after')?.get('assets/book.css'));
    }
    const next = run(site, 'after');
    expect(next.status, next.stderr).toBe(0);
    const settled = new Map(folderFiles(site));
    expect(settled.delete('tunes/mine.html')).toBe(true);
    expect(settled).toEqual(clean.get('after'));
  }
  expect(stopped).toBeGreaterThanOrEqual(steps - 1);
}, 300_000);
