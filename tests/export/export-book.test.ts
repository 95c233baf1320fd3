import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exportSite, exportTunes } from '../../src/app/export-book.ts';
import { UsageError } from '../../src/app/usage-error.ts';
import { siteZip } from '../../src/export/site-zip.ts';
import { downloadEndings } from '../../src/export/tune-downloads.ts';
import { buildSite } from '../../src/incremental/open-builds.ts';

const work = mkdtempSync(join(tmpdir(), 'bowbook-export-test-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const quiet = (): void => {};
const root = join(work, 'book');
const secret = 'Zephyrine';

const page = (id: string, rights: string, abc: string): string =>
  `---\ntitle: ${id}\n${rights}\n---\n\n:::tune{#${id}}\n\`\`\`abc\n${abc}\n\`\`\`\n:::\n\n:::private\n${secret}\n:::\n`;

/** A book with a tune that may go out, one that may not, and one that cannot be read. */
beforeAll(() => {
  mkdirSync(join(root, 'tunes'), { recursive: true });
  writeFileSync(join(root, 'bowbook.yaml'), 'title: The Quay Class\n');
  const [ours, theirs] = [
    'X:1\nT:Ours\nM:4/4\nL:1/8\nK:D\nDEFG ABcd|d4 D4|',
    'X:1\nT:Theirs\nM:4/4\nL:1/8\nK:G\nGABc dBGB|G4 G,4|',
  ];
  writeFileSync(join(root, 'tunes/ours.md'), page('ours', 'rights: own', ours));
  writeFileSync(join(root, 'tunes/theirs.md'), page('theirs', 'rights: unknown', theirs));
  const odd = 'X:1\nT:Odd\nK:D\nDEF|\n[!e';
  writeFileSync(join(root, 'tunes/odd.md'), page('odd', 'rights: own', odd));
});

describe('exporting tunes', () => {
  it('writes what may leave, in every form, and says what stayed', async () => {
    const { files, problems } = await exportTunes(root, [], downloadEndings, quiet);
    expect(files.map(f => f.name)).toEqual(downloadEndings.map(e => `ours.${e}`));
    expect(problems.map(p => [p.rule, 'tune' in p.facts && p.facts.tune])).toEqual([
      ['export-unreadable', 'odd'],
      ['export-withheld', 'theirs'],
    ]);
  });

  it('gives the same bytes each time, and those of the tune’s page', async () => {
    const first = await exportTunes(root, ['ours'], downloadEndings, quiet);
    const second = await exportTunes(root, ['ours'], downloadEndings, quiet);
    expect(second).toEqual(first);
    const { zip } = await exportSite(root, quiet);
    const site = unzipSync(zip ?? new Uint8Array());
    for (const { name, content } of first.files) {
      const beside = site[`the-quay-class/tunes/${name}`];
      expect(Buffer.from(beside ?? []).equals(Buffer.from(content)), name).toBe(true);
    }
  }, 60_000);

  it('takes nothing of a private note along', async () => {
    const { files } = await exportTunes(root, [], downloadEndings, quiet);
    for (const { content } of files) {
      expect(Buffer.from(content).toString('latin1')).not.toContain(secret);
    }
  });

  it('says where a tune is not known', async () => {
    await expect(exportTunes(root, ['our'], ['abc'], quiet)).rejects.toThrow(UsageError);
    await expect(exportTunes(root, ['our'], ['abc'], quiet)).rejects.toThrow(/mean "ours"/);
  });
});

describe('the site as one zip', () => {
  it('holds every page but itself, and nothing that is withheld or private', async () => {
    const { zip } = await exportSite(root, quiet);
    const files = unzipSync(zip ?? new Uint8Array());
    const names = Object.keys(files);
    expect(names).toContain('the-quay-class/index.html');
    expect(names.every(name => name.startsWith('the-quay-class/'))).toBe(true);
    expect(names.filter(name => /zip$|manifest\.json$/.test(name))).toEqual([]);
    expect(names.filter(name => /tunes\/theirs\.(?!html)/.test(name))).toEqual([]);
    for (const [name, bytes] of Object.entries(files)) {
      expect(Buffer.from(bytes).includes(secret), name).toBe(false);
    }
  }, 60_000);

  it('is the same after a second build, which does not pack the first', async () => {
    const out = join(work, 'site');
    const build = () => buildSite({ root, out, isPrivate: false, progress: quiet });
    await build();
    const first = await exportSite(root, quiet);
    await build();
    const second = await exportSite(root, quiet);
    expect(Buffer.from(second.zip ?? []).equals(Buffer.from(first.zip ?? []))).toBe(true);
  }, 60_000);

  it('sorts its files, dates them alike, and names them in UTF-8', () => {
    const bytes = Buffer.from('x'.repeat(100));
    const files = ['b.html', 'a/ü.html', 'media/a.mp3'].map(path => ({ path, read: () => bytes }));
    const zip = siteZip('book', files);
    expect(siteZip('book', files.toReversed())).toEqual(zip);
    expect(Object.keys(unzipSync(zip))).toEqual([
      'book/a/ü.html',
      'book/b.html',
      'book/media/a.mp3',
    ]);
    // Local header (APPNOTE.TXT 4.3.7): flags at 6, bit 11 for UTF-8 names; time and date at 10.
    const view = new DataView(zip.buffer, zip.byteOffset);
    expect(view.getUint16(6, true) & 0x800).toBe(0x800);
    expect(view.getUint16(10, true)).toBe(0);
    expect(view.getUint16(12, true)).toBe((0 << 9) | (1 << 5) | 1);
  });

  it('holds no path that leaves its folder', () => {
    for (const path of ['../x', '/x', 'a//b', 'a\\b', './x']) {
      expect(() => siteZip('book', [{ path, read: () => new Uint8Array() }])).toThrow(path);
    }
  });

  it('is not made of a private site', async () => {
    const out = join(work, 'private');
    const { failed } = await buildSite({ root, out, isPrivate: true, progress: quiet });
    expect(failed).toBe(false);
    expect(existsSync(join(out, 'index.html'))).toBe(true);
    expect(existsSync(join(out, 'whole-site.zip'))).toBe(false);
  }, 60_000);
});
