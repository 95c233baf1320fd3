import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { limits } from '../../shared/limits.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { importTunes } from '../../src/app/import-tunes.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';

/** Limits that a test can pass without filling the disk; what is past them is told of the same way. */
vi.mock('../../shared/limits.ts', async original => {
  const { limits: real } = await original<typeof import('../../shared/limits.ts')>();
  const small = {
    files: 3,
    pageLength: 300,
    pageLines: 20,
    lineLength: 120,
    tableCells: 6,
    linkLength: 40,
    pictureSize: 10,
    recordingSize: 20,
    abcSize: 150,
    tunes: 2,
  };
  return { limits: { ...real, ...small } };
});

const work = mkdtempSync(join(tmpdir(), 'bowbook-limits-'));
afterEach(() => rmSync(work, { recursive: true, force: true }));

const lesson = 'lessons/2026-09-15-first.md';
const abc = (n: number): string => `X:${n}\nT:Plank ${n}\nM:2/4\nL:1/8\nK:D\nDEFG|A4|\n`;
const row = '| a | b |\n';

function writeBook(files: Readonly<Record<string, string>>): string {
  const book = join(work, 'book');
  const all = { 'bowbook.yaml': 'title: Tuesday\nrights: own\n', ...files };
  for (const [path, text] of Object.entries(all)) {
    mkdirSync(dirname(join(book, path)), { recursive: true });
    writeFileSync(join(book, path), text);
  }
  return book;
}

const saidOf = async (root: string) =>
  (await studyBook(root, () => {})).problems.map(p => [p.rule, p.place?.line ?? null]);

describe('a book past the limits', () => {
  it.each([
    ['page-past-limit', { [lesson]: 'Slowly, in single strokes.\n'.repeat(15) }, 1],
    ['lines-past-limit', { [lesson]: 'Slowly.\n'.repeat(30) }, 21],
    ['line-past-limit', { [lesson]: `Hm.\n\n${'la '.repeat(50)}\n` }, 3],
    ['table-past-limit', { [lesson]: `Hm.\n\n${row}|---|---|\n${row.repeat(4)}` }, 3],
    ['link-past-limit', { [lesson]: `[x](https://class.example/${'a'.repeat(30)})\n` }, 1],
    ['media-past-limit', { 'media/quay.jpg': 'x'.repeat(11) }, null],
    ['media-past-limit', { 'media/quay.mp3': 'x'.repeat(21) }, null],
    ['files-past-limit', { 'media/a': '', 'media/b': '', 'media/c': '', 'media/d': '' }, null],
  ] as const)('%s', async (rule, files, line) => {
    expect(await saidOf(writeBook(files))).toEqual([[rule, line]]);
  });

  it('tunes-past-limit: of a bare file the first tunes are read', () => {
    const text = [1, 2, 3].map(abc).join('\n');
    const { tunes, problems } = parseTunes({ text, file: 'all.abc', line: 1, indent: 0 });
    expect(tunes).toHaveLength(2);
    expect(problems).toMatchObject([{ rule: 'tunes-past-limit', place: { line: 15 } }]);
  });

  it('outside-the-book: a link out of the folder is told of and not followed', async () => {
    const book = writeBook({ 'media/own.mp3': 'x' });
    writeFileSync(join(work, 'secret.mp3'), 'x');
    symlinkSync(join(work, 'secret.mp3'), join(book, 'media/secret.mp3'));
    expect(await saidOf(book)).toEqual([['outside-the-book', null]]);
  });

  it('abc-past-limit: a collection past its size is not read', async () => {
    const root = writeBook({});
    const file = join(work, 'all.abc');
    writeFileSync(file, [1, 2, 3, 4].map(abc).join('\n'));
    const options = { root, type: null, rights: null, learnedFrom: null, dryRun: true };
    const { problems, tunes } = await importTunes({ ...options, files: [file] });
    expect([problems.map(p => p.rule), tunes]).toEqual([['abc-past-limit'], 0]);
  });

  it('is what is tried: the small limits hold here', () => {
    expect(limits.files).toBe(3);
  });
});
