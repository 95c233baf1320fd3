/** @module-tag slow */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, expect, it } from 'vitest';
import { rollDice } from '../../shared/drills/dice.ts';
import { seed } from '../seed.ts';
import { folderFiles } from './folder-files.ts';
import { writeSmallBook } from './small-book.ts';

/**
 * Builds over a site are killed at random instants, every third time while the new files are being
 * moved over the old ones. After each kill every file is whole, as the old build or as the new one
 * made it; the next build is byte for byte a clean one. `npm run faults` kills 300; the plain test
 * run a few.
 */
const kills = Number(process.env.BOWBOOK_KILLS ?? 6);

/** From 0 to 1: the moments are drawn with the seed, though no machine keeps them to the millisecond. */
const dice = rollDice('kills', seed);
const random = (): number => dice.below(1e9) / 1e9;

const root = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-kill-'));
const [book, site, cache] = ['book', 'site', 'cache'].map(name => join(work, name)) as [
  string,
  string,
  string,
];
const command = (out: string, ...more: string[]): string[] => [
  join(root, 'dist/cli.js'),
  'build',
  book,
  '--quick',
  '--out',
  out,
  ...more,
];

function buildWhole(out: string, ...more: string[]): void {
  const ran = spawnSync(process.execPath, command(out, ...more), { encoding: 'utf8' });
  expect(ran.status, ran.stderr).toBe(0);
}

/** Starts a build and kills it at a moment; false where it was done by then. */
async function killAt(moment: (isOver: () => boolean) => Promise<unknown>): Promise<boolean> {
  const child = spawn(process.execPath, command(site, '--cache', cache), { stdio: 'ignore' });
  const ended = new Promise<NodeJS.Signals | null>(resolve => {
    child.on('exit', (_, signal) => resolve(signal));
  });
  await moment(() => child.exitCode !== null);
  child.kill('SIGKILL');
  return (await ended) === 'SIGKILL';
}

/** Some hundredths of a millisecond to a few milliseconds after the moves have begun. */
async function amongMoves(isOver: () => boolean): Promise<void> {
  const journal = join(work, '.bowbook-site', 'journal.json');
  while (!existsSync(journal) && !isOver()) await pause(0);
  const until = performance.now() + random() ** 2 * 4;
  while (performance.now() < until);
}

afterAll(() => rmSync(work, { recursive: true, force: true }));

it(`leaves whole files when killed, ${kills} times`, {
  timeout: 120_000 + kills * 30_000,
}, async () => {
  const clean = new Map<string, ReadonlyMap<string, string>>();
  for (const state of ['before', 'after'] as const) {
    writeSmallBook(book, state);
    buildWhole(join(work, state), '--fresh');
    clean.set(state, folderFiles(join(work, state)));
  }
  buildWhole(site, '--cache', cache);
  writeFileSync(join(site, 'CNAME'), 'fiddles.example\n');
  const own = folderFiles(site).get('CNAME');

  let [killed, mixed, lasted] = [0, 0, 800];
  for (let i = 0; i < kills; i++) {
    const state = i % 2 === 0 ? 'before' : 'after';
    writeSmallBook(book, state);
    if (i % 4 < 2) rmSync(cache, { recursive: true, force: true });
    const aimed = i % 3 === 2;
    const time = random() * lasted;
    if (await killAt(aimed ? amongMoves : () => pause(time))) killed++;
    const found = folderFiles(site);
    expect(found.get('CNAME')).toBe(own);
    const torn = [...found].filter(
      ([path, hash]) =>
        path !== 'CNAME' && ![...clean.values()].some(files => files.get(path) === hash),
    );
    expect(torn).toEqual([]);
    // What both builds have is there at every instant.
    const lost = [...(clean.get('before') ?? [])].filter(
      ([path]) => clean.get('after')?.has(path) && !found.has(path),
    );
    expect(lost).toEqual([]);
    const states = [...clean].filter(([, files]) =>
      [...files].every(([p, h]) => found.get(p) === h),
    );
    if (states.length === 0) mixed++;

    const began = performance.now();
    buildWhole(site, '--cache', cache);
    lasted = performance.now() - began;
    const next = new Map(folderFiles(site));
    next.delete('CNAME');
    expect(next).toEqual(clean.get(state));
  }
  console.log(
    `${kills} builds, ${killed} killed before their end, ${mixed} of them with old and new files mixed; torn files: 0`,
  );
});
