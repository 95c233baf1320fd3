import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';

/**
 * Whether anything on a published site tells the notes of a tune whose rights are not known. The
 * same book is built twice, and the two differ in nothing but pitches and slurs: every note of the
 * second is the note of the first put through a table, one for one. Both have the same form and map. So
 * where the notes are withheld, in every form, the two sites are the same to the byte: pages, data,
 * search, sheets, the printed book, the archive.
 */
const table: Readonly<Record<string, string>> = {
  D: 'F',
  E: 'B',
  F: 'D',
  G: 'e',
  A: 'E',
  B: 'A',
  d: 'f',
  e: 'G',
  f: 'd',
  g: 'a',
  a: 'g',
};

const first = [
  '|:DFAd BAFA|GEFD E2 FG|DFAd BAFA|GEFD D2 D2:|',
  'dfaf geeg|fdec BAFA|(df)af geeg|BAFD D2 D2|]',
].join('\n');
// One slur fewer: so the strokes differ too, and where the bow arrives.
const second = [...first.replace(/[()]/g, '')].map(c => table[c] ?? c).join('');

const lesson = `---
title: What we may not print
---

:::::tune{#withheld learned-from="Somebody at the quay"}
A story about it.

\`\`\`abc
X:1
T:The Withheld Reel
R:reel
M:4/4
L:1/8
K:D
NOTES
\`\`\`
:::::

::tune{of=withheld bars="A1-A2" show=ear}

:::anchor{#close of=withheld bars="B1" start=down}
All alike.
:::

::plan{to=close level=advanced}

::map{of=withheld}

::map{of=withheld unit=4}

${['call', 'gaps', 'count', 'arrive', 'start', 'same', 'forks', 'into']
  .map(kind => `::drill{kind=${kind} of=withheld${kind === 'into' ? ' to=close' : ''}}\n`)
  .join('\n')}
::clip[At the quay]{src=media/quay.wav of=withheld at="A1=0:01 B1=0:09"}

::clip[Elsewhere]{link="https://recordings.example/quay" of=withheld start=0:01 tempo=84}

:::set{#both}
- withheld x2
- free-reel x2
:::
`;

const free = `\`\`\`abc
X:1
T:Free Reel
R:reel
M:4/4
L:1/8
K:G
|:GABd edBd|gedB A2 Bd:|
\`\`\`
`;

const folder = mkdtempSync(join(tmpdir(), 'bowbook-rights-'));

/** Builds the book and reads the whole site, bytes as latin-1 text, by path. */
async function siteOf(name: string, notes: string, rights: string): Promise<Map<string, string>> {
  // Both books stand at the same place, one after the other, so that no path tells them apart.
  const root = join(folder, 'book');
  const out = join(folder, name);
  const files: Readonly<Record<string, string>> = {
    'bowbook.yaml': 'title: Rights\nsite: https://example.org/fiddles/\n',
    'lessons/2026-11-03-withheld.md': lesson
      .replace('NOTES', notes)
      .replace('#withheld', `#withheld rights=${rights}`),
    'tunes/free.md': `---\nrights: own\n---\n${free}`,
    'media/quay.wav': 'RIFF not to be played',
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const result = await buildSite({ root, out, isPrivate: false, progress: () => {} });
  expect(result.problems.filter(p => p.severity === 'error')).toEqual([]);
  const paths = readdirSync(out, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
    .sort();
  return new Map(paths.map(path => [path.slice(out.length + 1), readFileSync(path, 'latin1')]));
}

let sites: Readonly<Record<'one' | 'other' | 'own' | 'ownOther', Map<string, string>>>;

beforeAll(async () => {
  sites = {
    one: await siteOf('one', first, 'unknown'),
    other: await siteOf('other', second, 'unknown'),
    own: await siteOf('own', first, 'own'),
    ownOther: await siteOf('own-other', second, 'own'),
  };
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const differing = (a: Map<string, string>, b: Map<string, string>): readonly string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter(path => a.get(path) !== b.get(path)).sort();

describe('a tune whose rights are not known', () => {
  it('leaves no trace of its notes in any file of the site', () =>
    expect(differing(sites.one, sites.other)).toEqual([]));

  it('would be told apart on pages, paper and in every download if they were known', () =>
    expect(differing(sites.own, sites.ownOther)).toEqual(
      expect.arrayContaining([
        'lessons/2026-11-03-withheld.html',
        'played-together.html',
        'print/tune-book.pdf',
        'tunes/index.html',
        'tunes/withheld-sheets.pdf',
        'tunes/withheld.abc',
        'tunes/withheld.html',
        'tunes/withheld.js',
        'tunes/withheld.json',
        'tunes/withheld.mid',
        'tunes/withheld.musicxml',
        'whole-site.zip',
      ]),
    ));

  it('has no recording there, and no link to one', () => {
    const all = [...sites.one.values()].join('\n');
    expect(sites.one.has('media/quay.wav')).toBe(false);
    expect(all).not.toContain('RIFF not to be played');
    expect(all).not.toContain('recordings.example');
    expect(all).not.toContain('quay.wav');
    expect(sites.own.has('media/quay.wav')).toBe(true);
  });

  it('has its page, with its story, its map and its credits, and says why there is no more', () => {
    const page = sites.one.get('tunes/withheld.html') ?? '';
    expect(page).toContain('The Withheld Reel');
    expect(page).toContain('Somebody at the quay');
    expect(page).toMatch(/class="[^"]*\bmap\b/);
    expect(page).not.toContain('<svg class="stave');
    const files = [...sites.one.keys()].filter(path => path.includes('withheld'));
    expect(files).toEqual(['lessons/2026-11-03-withheld.html', 'tunes/withheld.html']);
  });

  it('keeps its place and its length in a set, without the strokes', () => {
    const page = sites.one.get('played-together.html') ?? '';
    expect(page).toContain('The Withheld Reel');
    expect(page).toContain('The rights to one of these tunes are not known');
    // The free tune has a bow of its own, which is still told.
    expect(page.match(/It ends on/g)).toHaveLength(1);
  });
});
