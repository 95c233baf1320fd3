import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { folderFiles } from './folder-files.ts';
import { writeSmallBook } from './small-book.ts';

/** The same book, in another folder, time zone and locale, from another working folder. */
const root = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-same-'));
const places = [
  { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' },
  { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  { TZ: 'America/St_Johns', LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' },
];

afterAll(() => rmSync(work, { recursive: true, force: true }));

it('makes the same bytes everywhere, and a manifest that has them right', () => {
  const sites = places.map((env, i) => {
    const [book, site] = [join(work, `book ${i}`), join(work, `site ${i}`)];
    writeSmallBook(book, 'before');
    const args = [join(root, 'dist/cli.js'), 'build', book, '--out', site, '--fresh'];
    const options = { encoding: 'utf8', cwd: i === 0 ? root : work } as const;
    const ran = spawnSync(process.execPath, args, { ...options, env: { ...process.env, ...env } });
    expect(ran.status, ran.stderr).toBe(0);
    return site;
  });
  const [first, ...others] = sites.map(folderFiles);
  for (const other of others) expect(other).toEqual(first);

  const manifest = JSON.parse(readFileSync(join(sites[0] ?? '', 'bowbook-manifest.json'), 'utf8'));
  const listed = new Map(first);
  listed.delete('bowbook-manifest.json');
  expect(new Map(Object.entries(manifest.files))).toEqual(listed);
});
