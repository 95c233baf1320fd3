import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { explainFile } from '../../src/app/explain.ts';
import { type ImportOptions, importTunes } from '../../src/app/import-tunes.ts';
import { readBook } from '../../src/read/read-book.ts';
import { ownTunes } from '../tunes/own-tunes.ts';
import { type AbcFile, allTunes, realFiles, realTunesMissing } from '../tunes/real-tunes.ts';

const work = mkdtempSync(join(tmpdir(), 'bowbook-import-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(work, 'book-'));
  writeFileSync(join(root, 'bowbook.yaml'), 'title: Imported\n');
});

const put = (name: string, content: string | Uint8Array): string => {
  const path = join(root, name);
  writeFileSync(path, content);
  return path;
};

const run = (files: readonly string[], rest: Partial<ImportOptions> = {}) =>
  importTunes({ root, files, type: null, rights: null, learnedFrom: null, dryRun: false, ...rest });

const page = (id: string): string => readFileSync(join(root, 'tunes', `${id}.md`), 'utf8');
const allPages = (): Record<string, string> =>
  Object.fromEntries(
    readdirSync(join(root, 'tunes'))
      .toSorted()
      .map(name => [name, readFileSync(join(root, 'tunes', name), 'utf8')]),
  );

const twoTunes = `X:1
T:The Wet Step
C:Wenna Harkle, 2021
R:reel
M:4/4
L:1/8
K:D
DEFG ABcd|d4 D4|

X:2
T:Over the Sill
M:6/8
K:G
GAB dBG|A3 G3|
`;

describe('importing tunes', () => {
  it('makes a page of each, which the book reads without an error', async () => {
    const result = await run([put('two.abc', twoTunes)]);
    expect(result).toMatchObject({ tunes: 2, present: 0, notUnderstood: 0, problems: [] });
    expect(result.written).toEqual(['tunes/the-wet-step.md', 'tunes/over-the-sill.md']);
    expect(page('the-wet-step')).toBe(`---
title: "The Wet Step"
# Who owns it? Write traditional or own here, or take the line out and write permission: "…".
rights: unknown
# Who is it from? learned-from: …
---

:::tune{#the-wet-step}
\`\`\`abc
X:1
T:The Wet Step
C:Wenna Harkle, 2021
R:reel
M:4/4
L:1/8
K:D
DEFG ABcd|d4 D4|
\`\`\`
:::
`);
    expect(page('over-the-sill')).toContain('# What is it? type: reel, jig,');
    expect((await readBook(root)).problems).toEqual([]);
  });

  it('says of all what the teacher says of all', async () => {
    await run([put('two.abc', twoTunes)], {
      type: 'jig',
      rights: 'own',
      learnedFrom: 'Osric: "at the quay"',
    });
    const book = await readBook(root);
    expect(book.problems).toEqual([]);
    const blocks = book.tunePages.flatMap(p => p.blocks);
    expect(blocks).toMatchObject([
      { rights: { kind: 'own' }, type: 'jig', learnedFrom: 'Osric: "at the quay"' },
      { rights: { kind: 'own' }, type: 'jig', learnedFrom: 'Osric: "at the quay"' },
    ]);
  });

  it('changes nothing the second time, nor where the teacher has worked on a page', async () => {
    const file = put('two.abc', twoTunes);
    await run([file]);
    const path = join(root, 'tunes/the-wet-step.md');
    const worked = page('the-wet-step')
      .replace('rights: unknown', 'rights: own')
      .replace('DEFG ABcd', 'v(DE)FG A!1!Bcd');
    writeFileSync(path, worked);
    const before = allPages();
    const again = await run([file]);
    expect(again).toMatchObject({ tunes: 2, written: [], present: 2, problems: [] });
    expect(allPages()).toEqual(before);
  });

  it('never writes over a page, and names what is alike', async () => {
    mkdirSync(join(root, 'tunes'));
    writeFileSync(join(root, 'tunes/the-wet-step.md'), '---\ntitle: Mine\n---\n\nNotes.\n');
    const others = `X:1
T:Over the Sill
K:D
D8|

X:2
T:Under the Sill
M:6/8
K:G
GAB dBG|A3 G3|

X:3
T:Over the Sill
M:6/8
K:G
GAB dBG|A3 G3|
`;
    const result = await run([put('two.abc', twoTunes), put('others.abc', others)]);
    expect(readFileSync(join(root, 'tunes/the-wet-step.md'), 'utf8')).toContain('Mine');
    expect(result.written).toEqual([
      'tunes/the-wet-step-2.md',
      'tunes/over-the-sill.md',
      'tunes/over-the-sill-2.md',
      'tunes/under-the-sill.md',
      'tunes/over-the-sill-3.md',
    ]);
    expect(result.problems.map(p => [p.rule, p.place?.line])).toEqual([
      ['import-same-title', 1],
      ['import-same-notes', 6],
      ['import-same-twice', 12],
    ]);
    for (const p of result.problems) expect(wordProblem(p).message).toContain('the Sill"');
    expect((await readBook(root)).problems.filter(p => p.severity === 'error')).toEqual([]);
  });

  it('keeps a tune that cannot be read as it was, and says where that is', async () => {
    const odd = 'L:1/8\n\nX:1\nT:Odd\nK:D\nDEF|\n[!e\n\nX:2\nT:Fences\nK:D\n% ```\nD8|\n';
    const result = await run([put('odd.abc', odd)]);
    expect(result).toMatchObject({ tunes: 2, notUnderstood: 1 });
    expect(result.problems[0]).toMatchObject({ rule: 'abc-unreadable', place: { line: 7 } });
    expect(page('odd')).toContain('```abc\nX:1\nL:1/8\nT:Odd\nK:D\nDEF|\n[!e\n```\n');
    expect(page('fences')).toContain('````abc\nX:2\n');
    const again = await run([join(root, 'odd.abc')]);
    expect(again).toMatchObject({ written: [], present: 2 });
  });

  it('reads old encodings, and gives names that every system can keep', async () => {
    const old = Buffer.from(
      `X:1\rT:Caf\xe9 &eacute;t\\'e\rK:D\rD8|\r\rX:2\rT:Con\rK:D\rE8|\r\rX:3\rT:!!!\rK:D\rF8|\r`,
      'latin1',
    );
    const result = await run([put('old.abc', old)]);
    expect(result.written).toEqual(['tunes/cafe-ete.md', 'tunes/con-tune.md', 'tunes/tune-3.md']);
    expect(page('cafe-ete')).toContain('title: "Café été"');
    expect(page('cafe-ete')).toContain('\nT:Café été\n');
    expect(result.problems.map(p => p.rule)).toEqual(['import-encoding']);
  });

  it('reads the same letters as `explain` does, in every encoding', async () => {
    const abc = 'X:1\nT:Caf\xe9\nC:N\xfa\xf1ez\nK:D\nD8|\n';
    const files = [
      put('utf8.abc', Buffer.from(abc, 'utf8')),
      put('utf16.abc', Buffer.from(`\ufeff${abc}`, 'utf16le')),
      put('old.abc', Buffer.from(abc, 'latin1')),
      put('said.abc', Buffer.from(`%%abc-charset iso-8859-1\n${abc}`, 'latin1')),
    ];
    for (const file of files) {
      expect((await explainFile(file, {})).text, file).toContain('Café');
      await run([file]);
    }
    expect(page('cafe')).toContain('\nT:Café\nC:Núñez\n');
  });

  it('writes nothing on a dry run, and says where a file has no tune', async () => {
    const dry = await run([put('two.abc', twoTunes)], { dryRun: true });
    expect(dry.written.length).toBe(2);
    expect(readdirSync(root)).not.toContain('tunes');
    const none = await run([put('letter.txt', 'Dear Wenna\n')]);
    expect(none).toMatchObject({ tunes: 0, problems: [{ rule: 'import-no-tune' }] });
  });
});

/** A tune without the places it was read from: what is the same wherever it stands. */
const music = (tune: Tune): unknown => {
  const { source: _, id: __, bars, events, ...rest } = tune;
  return {
    ...rest,
    bars: bars.map(({ place: _, ...bar }) => bar),
    events: events.map(({ place: _, start: __, stop: ___, ...event }) => event),
  };
};

/** Every tune of the files is had, the same as there; importing twice changes nothing. */
async function importAll(taken: readonly AbcFile[]): Promise<void> {
  const folder = mkdtempSync(join(work, 'files-'));
  const files = taken.map(({ name, text }) => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  });
  const written = taken.flatMap(({ text }) =>
    text.split(/^(?=X:)/m).filter(t => t.startsWith('X:')),
  );
  const first = await run(files);
  expect(first.tunes).toBe(written.length);
  expect(first.written.length).toBe(written.length);
  const book = await readBook(root);
  expect(book.problems.filter(p => p.severity === 'error')).toEqual([]);
  const byPath = new Map(book.tunePages.map(p => [p.file, p.blocks.find(b => b.kind === 'tune')]));
  let read = 0;
  for (const [i, path] of first.written.entries()) {
    const block = byPath.get(path);
    if (block?.kind !== 'tune') throw new Error(`no tune on ${path}`);
    const source = { text: written[i] ?? '', file: 'file.abc', line: 1, indent: 0 };
    const own = parseTunes(source).tunes.map(music);
    expect([path, parseTunes(block.abc).tunes.map(music)]).toEqual([path, own]);
    read += own.length;
  }
  expect(read).toBeGreaterThan(0.98 * written.length);
  const before = allPages();
  expect(await run(files)).toMatchObject({ written: [], present: written.length });
  expect(allPages()).toEqual(before);
}

describe('importing many tunes', () => {
  it('has those of our own', async () => {
    await importAll([{ name: 'own.abc', text: ownTunes.map(t => t.abc).join('\n') }]);
  });

  it('has real tunes, a third of the files or all', { timeout: 600_000 }, async context => {
    context.skip(realTunesMissing !== null, realTunesMissing ?? '');
    await importAll(realFiles().filter((_, i) => allTunes || i % 3 === 0));
  });
});
