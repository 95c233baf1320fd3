/** @module-tag slow */
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildSite, openBuilds } from '../../src/incremental/open-builds.ts';
import { folderFiles } from '../output/folder-files.ts';

/**
 * The demo book edited as a teacher would, one edit upon another. After each the site is rebuilt
 * from what the cache and the site hold, and must be byte for byte what a clean build makes.
 */
// Each test builds the demo book twice, unbundled.
vi.setConfig({ testTimeout: 300_000 });

const work = mkdtempSync(join(tmpdir(), 'bowbook-edits-'));
const [root, out, cache] = ['book', 'site', 'cache'].map(name => join(work, name)) as [
  string,
  string,
  string,
];
const options = { root, isPrivate: false, progress: () => {} };
const file = (name: string): string => join(root, name);
const change = (name: string, from: string | RegExp, to: string): void => {
  const text = readFileSync(file(name), 'utf8');
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`${name} has nothing like ${from}`);
  writeFileSync(file(name), changed);
};
const lessons = (): string[] =>
  readdirSync(file('lessons'))
    .filter(n => n.endsWith('.md'))
    .sort();
const lesson = (n: number): string => `lessons/${lessons().at(n)}`;
const tunes = (): string[] =>
  readdirSync(file('tunes'))
    .filter(n => n.endsWith('.md'))
    .sort();

async function cleanBuild(): Promise<ReadonlyMap<string, string>> {
  const folder = join(work, 'clean');
  rmSync(folder, { recursive: true, force: true });
  const { failed, problems } = await buildSite({ ...options, out: folder });
  expect(failed, JSON.stringify(problems.filter(p => p.severity === 'error'))).toBe(false);
  return folderFiles(folder);
}

beforeAll(async () => {
  cpSync(join(import.meta.dirname, '../../content'), root, { recursive: true });
  change('bowbook.yaml', /^title: .*$/m, 'title: An evening class\npdf: none');
  await buildSite({ ...options, out, cache });
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

const someTune = (): string => `tunes/${tunes()[2]}`;

const edits: readonly (readonly [string, () => void])[] = [
  ['nothing', () => {}],
  ['prose at the end of a lesson', () => change(lesson(1), /\n*$/, '\n\nOne word more.\n')],
  [
    'prose at its head, so that every line moves',
    () => change(lesson(1), /^---\n\n/m, '---\n\nA word first.\n\n'),
  ],
  ['the title of a lesson', () => change(lesson(0), /^title: .*$/m, 'title: Another evening')],
  [
    'a lesson more',
    () =>
      writeFileSync(file('lessons/2031-01-01-later.md'), `---\ntitle: Later\n---\n\nOn we go.\n`),
  ],
  [
    'a tune shown in it',
    () =>
      change(
        'lessons/2031-01-01-later.md',
        'On we go.',
        `On we go.\n\n::tune{of=${idOf(someTune())}}`,
      ),
  ],
  [
    'its map too',
    () => change('lessons/2031-01-01-later.md', /$/, `\n::map{of=${idOf(someTune())}}\n`),
  ],
  [
    'another tune shown where it is said why a passage of it is fixed',
    () =>
      change(
        'lessons/2031-01-01-later.md',
        /$/,
        `\n::::anchor{#like-it of=${idOf(someTune())} bars="B3-B4" start=down}\nAs in\n\n::tune{of=${idOf(`tunes/${tunes()[0]}`)}}\n::::\n`,
      ),
  ],
  ['a note of a tune', () => change(someTune(), /([A-G])([a-g])/, '$2$1')],
  ['the story of a tune', () => change(someTune(), /\n*$/, '\n\nSo they say.\n')],
  ['the level of the whole book', () => change('bowbook.yaml', /^level: .*$/m, 'level: beginner')],
  ['the title of the book', () => change('bowbook.yaml', /^title: .*$/m, 'title: A class of ours')],
  [
    'a page more',
    () => writeFileSync(file('pages/where.md'), '---\ntitle: Where\n---\n\nBy the quay.\n'),
  ],
  ['a lesson less', () => rmSync(file('lessons/2031-01-01-later.md'))],
];

/** The first tune that a page defines. */
function idOf(name: string): string {
  const text = readFileSync(file(name), 'utf8');
  const title = /^T:\s*(.*)$/m.exec(text)?.[1] ?? '';
  return /:::+tune\{[^}]*#([\w-]+)/.exec(text)?.[1] ?? title.toLowerCase().replace(/[^a-z]+/g, '-');
}

describe('a rebuild', () => {
  it.each(edits)('after %s is what a clean build makes', async (_, edit) => {
    edit();
    const { failed } = await buildSite({ ...options, out, cache });
    expect(failed).toBe(false);
    expect(folderFiles(out)).toEqual(await cleanBuild());
  });

  it('in one process, as the preview does, is so too', async () => {
    const builds = openBuilds({ ...options, out, cache });
    await builds.build();
    change(someTune(), /([A-G])([a-g])/, '$2$1');
    await builds.build();
    change(lesson(1), /\n*$/, '\n\nAnd another.\n');
    await builds.build();
    await builds.close();
    expect(folderFiles(out)).toEqual(await cleanBuild());
  });

  it('touches no file of which nothing changed', async () => {
    const before = readdirSync(join(out, 'tunes')).length;
    writeFileSync(join(out, 'tunes', 'mine.txt'), 'mine');
    await buildSite({ ...options, out, cache });
    expect(readdirSync(join(out, 'tunes')).length).toBe(before + 1);
    rmSync(join(out, 'tunes', 'mine.txt'));
  });

  it.each([
    ['cut short', (path: string) => truncateSync(path, 100)],
    ['emptied', (path: string) => truncateSync(path, 0)],
    [
      'with a byte turned',
      (path: string) => {
        const bytes = readFileSync(path);
        bytes[bytes.length - 20] = (bytes[bytes.length - 20] ?? 0) ^ 1;
        writeFileSync(path, bytes);
      },
    ],
    ['gone', (path: string) => rmSync(path)],
  ])('with every entry of its cache %s is right all the same', async (_, harm) => {
    for (const name of readdirSync(cache)) harm(join(cache, name));
    rmSync(join(out, 'tunes'), { recursive: true });
    await buildSite({ ...options, out, cache });
    expect(folderFiles(out)).toEqual(await cleanBuild());
  });

  it.each([/^(?!state-)/, /^state-/])(
    'with the entries like %s garbled is right too',
    async which => {
      const names = readdirSync(cache).filter(n => which.test(n));
      expect(names.length).toBeGreaterThan(0);
      for (const name of names) writeFileSync(join(cache, name), 'not an entry');
      change(lesson(1), /\n*$/, '\n\nStill another.\n');
      change(someTune(), /([A-G])([a-g])/, '$2$1');
      await buildSite({ ...options, out, cache });
      expect(folderFiles(out)).toEqual(await cleanBuild());
    },
  );

  it('mends a page that somebody else changed', async () => {
    writeFileSync(join(out, 'index.html'), 'not ours');
    rmSync(join(out, 'assets/book.css'));
    await buildSite({ ...options, out, cache });
    expect(folderFiles(out)).toEqual(await cleanBuild());
  });
});
