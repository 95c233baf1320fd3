import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { limits } from '../../shared/limits.ts';
import { limitMessages } from '../../shared/words/en/limits.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { explainFile } from '../../src/app/explain.ts';
import { importTunes } from '../../src/app/import-tunes.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { readBook } from '../../src/read/read-book.ts';
import { onTunes } from '../tunes/on-tunes.ts';

/** Every limit: at it a thing is read, one past it there is a message with a place and words. */
const head = 'X:1\nT:T\nM:none\nL:1/8\nK:D\n';
const broken = new Set<string>();

const ofTune = (text: string): readonly [rule: string, what: unknown][] => {
  const { problems } = parseTunes({ text, file: 'a.md', line: 1, indent: 0 });
  return problems
    .filter(p => p.rule in limitMessages)
    .map(p => {
      broken.add(p.rule);
      expect(p.place?.line).toBeGreaterThan(0);
      expect(wordProblem(p).message).toMatch(/\.$/);
      return [p.rule, 'what' in p.facts && p.facts.what];
    });
};

/** Lines of so many notes, none too long. */
const notes = (count: number): string =>
  Array.from({ length: Math.ceil(count / 40) }, (_, i) =>
    'A'.repeat(Math.min(40, count - 40 * i)),
  ).join('|\n');

describe('a tune', () => {
  it.each<[string, (most: number) => string, number]>([
    [
      'length',
      n =>
        head +
        '%'
          .padEnd(60, 'x')
          .concat('\n')
          .repeat(600)
          .slice(0, n - head.length),
      limits.tuneLength,
    ],
    ['line', n => `${head}A|\n%${'x'.repeat(n - 1)}`, limits.tuneLine],
    ['notes', n => head + notes(n), limits.notes],
    ['chord', n => `${head}A[${'A'.repeat(n)}]|`, limits.chord],
    ['graces', n => `${head}A{${'A'.repeat(n)}}A|`, limits.graces],
    ['meter', n => `X:1\nM:${n}/4\nK:D\nA|`, limits.beats],
    ['note-length', n => `${head}A${8 * n}|`, limits.noteLength],
    ['rest-bars', n => `X:1\nM:4/4\nK:D\nA8|Z${n}|`, limits.restBars],
  ])('has a limit of its %s', (what, make, most) => {
    expect(ofTune(make(most))).toEqual([]);
    expect(ofTune(make(most + 1))).toEqual([['tune-past-limit', what]]);
  });

  it('is one of so many in a text', () => {
    // Only the tune numbered 2, the last, is asked for, so that the others need not be read.
    const some = (n: number) => `${'X:1\nK:D\nA|\n\n'.repeat(n - 1)}X:2\nK:D\nA|\n`;
    const last = (n: number) =>
      parseTunes({ text: some(n), file: 'a.abc', line: 1, indent: 0 }, { number: '2' });
    expect(last(limits.tunes).tunes).toHaveLength(1);
    expect(last(limits.tunes).problems).toEqual([]);
    const past = last(limits.tunes + 1);
    expect(past.tunes).toEqual([]);
    expect(past.problems.map(p => p.rule)).toEqual(['tunes-past-limit']);
    broken.add('tunes-past-limit');
  });

  it('is left out alone: the tunes beside it are read', () => {
    const text = `${head}A[${'A'.repeat(99)}]|\n\nX:2\nT:Two\nK:D\nA|\n`;
    const { tunes } = parseTunes({ text, file: 'a.abc', line: 1, indent: 0 });
    expect(tunes.map(t => t.title)).toEqual(['Two']);
  });

  onTunes('as they are written meets none', 1, tunes => {
    const found = tunes.flatMap(({ name, abc }) => ofTune(abc).map(fault => [name, ...fault]));
    expect(found).toEqual([]);
  });
});

describe('a page', () => {
  const rulesOf = (page: string): readonly string[] => {
    const texts = new Map([
      ['bowbook.yaml', 'title: T\n'],
      ['pages/a.md', page],
    ]);
    return bookOf('b', { texts, media: [] }).problems.flatMap(p => {
      if (!(p.rule in limitMessages)) return [];
      broken.add(p.rule);
      expect(wordProblem(p).mend).toMatch(/\.$/);
      expect(p.place?.line).toBeGreaterThan(0);
      return [p.rule];
    });
  };
  const word = 'word '.repeat(19).concat('word\n');

  it.each<[string, string, string]>([
    ['page-past-limit', `\`\`\`\n${word.repeat(limits.pageLength / 100).slice(4)}`, 'x'],
    ['lines-past-limit', `\`\`\`\n${'a\n'.repeat(limits.pageLines - 2)}`, '\n'],
    ['line-past-limit', 'x'.repeat(limits.lineLength), 'x'],
    ['nested-past-limit', '> '.repeat(limits.nesting / 2), '> '.repeat(limits.nesting)],
    ['link-past-limit', `[a](https://${'x'.repeat(limits.linkLength - 8)}`, 'x)'],
  ])('has a limit: %s', (rule, within, more) => {
    expect(rulesOf(`${within}${rule === 'link-past-limit' ? ')' : ''}`)).toEqual([]);
    expect(rulesOf(within + more)).toEqual([rule]);
  });

  it('has a limit to a table, the cells that short rows leave out among them', () => {
    const table = (rows: number): string =>
      `|${'a|'.repeat(100)}\n|${'-|'.repeat(100)}\n${'|a\n'.repeat(rows)}`;
    expect(rulesOf(table(100))).toEqual([]);
    expect(rulesOf(table(limits.tableCells / 100))).toEqual(['table-past-limit']);
  });

  it.each([
    ['lists in lists', Array.from({ length: 120 }, (_, i) => `${' '.repeat(2 * i)}- a`).join('\n')],
    ['blocks in blocks', ':::private\n'.repeat(5000)],
    ['a key held down', '**a _b '.repeat(1400)],
    ['settings in settings', `---\nx: ${'['.repeat(5000)}\n---\n`],
    ['settings under settings', `---\n${'- '.repeat(2000)}\n---\n`],
  ])('is not lost in %s', (_, page) => {
    expect(() => rulesOf(page)).not.toThrow();
  });
});

describe('the files of a book', () => {
  let house: string;
  let root: string;
  beforeEach(() => {
    house = mkdtempSync(join(tmpdir(), 'bowbook-house-'));
    root = join(house, 'book');
    for (const folder of ['media', 'tunes', 'lessons'])
      mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(join(root, 'bowbook.yaml'), 'title: T\n');
    writeFileSync(join(house, 'secret.md'), '# SECRET-SENTINEL\n');
  });
  afterEach(() => rmSync(house, { recursive: true, force: true }));

  const said = async (): Promise<readonly (readonly [string, string | null])[]> => {
    const book = await readBook(root);
    expect(JSON.stringify(book)).not.toContain('SECRET-SENTINEL');
    for (const p of book.problems) {
      broken.add(p.rule);
      wordProblem(p);
    }
    return book.problems.map(p => [p.rule, p.actual] as const);
  };

  it('may be so large', async () => {
    for (const [name, size] of [
      ['a.png', limits.pictureSize],
      ['a.mp3', limits.recordingSize],
    ] as const) {
      const path = join(root, 'media', name);
      writeFileSync(path, '');
      truncateSync(path, size);
      expect(await said()).toEqual([]);
      truncateSync(path, size + 1);
      expect(await said()).toEqual([['media-past-limit', `media/${name}`]]);
      rmSync(path);
    }
  });

  it('may not have a name that no site or no memory stick can have', async () => {
    writeFileSync(join(root, 'media', 'a\\b.png'), '');
    expect(await said()).toEqual([['media-name-impossible', 'media/a\\b.png']]);
    rmSync(join(root, 'media', 'a\\b.png'));
    writeFileSync(join(root, 'media', 'a?.png'), '');
    expect(await said()).toEqual([['media-name', 'media/a?.png']]);
  });

  it.each([
    ['a.html', ''],
    ['a.XHTML', ''],
    ['a.js', ''],
    ['a.xml', ''],
    ['a.svg', '<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'],
    ['b.svg', '<svg xmlns="http://www.w3.org/2000/svg" onload = "x()"/>'],
    ['c.svg', '<svg><a href="javascript:x()"/></svg>'],
    ['d.svg', '<!DOCTYPE svg [<!ENTITY x "y">]><svg>&x;</svg>'],
    ['e.svg', '<svg><s:script xmlns:s="http://www.w3.org/2000/svg"/></svg>'],
    ['f.svg', '<svg><foreignObject><b/></foreignObject></svg>'],
  ])('may not be one that runs: %s', async (name, text) => {
    writeFileSync(join(root, 'media', name), text);
    expect(await said()).toEqual([['media-runs', `media/${name}`]]);
  });

  it('may be a drawing that is only drawn', async () => {
    const plain =
      '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L9 9" stroke="#000"/></svg>';
    writeFileSync(join(root, 'media', 'a.svg'), plain);
    writeFileSync(join(root, 'media', 'b.svg'), Buffer.from(plain, 'utf16le'));
    expect(await said()).toEqual([]);
  });

  it.each(['tunes/leak.md', 'lessons/2026-09-15-leak.md', 'media/leak.png', 'media/leak.md'])(
    'are not read through a link out of the book: %s',
    async path => {
      symlinkSync(join(house, 'secret.md'), join(root, path));
      expect(await said()).toEqual([['outside-the-book', path]]);
    },
  );

  it('are not read through a folder that is a link, and a link to a link is one', async () => {
    symlinkSync(house, join(root, 'pages'));
    symlinkSync(join(root, 'pages', 'secret.md'), join(root, 'tunes', 'twice.md'));
    expect((await said()).toSorted()).toEqual([
      ['outside-the-book', 'pages'],
      ['outside-the-book', 'tunes/twice.md'],
    ]);
  });

  it('may be links within the book, and links that go in circles are no hindrance', async () => {
    writeFileSync(join(root, 'media', 'a.png'), '');
    symlinkSync('a.png', join(root, 'media', 'b.png'));
    symlinkSync('.', join(root, 'media', 'round'));
    symlinkSync('self.md', join(root, 'tunes', 'self.md'));
    const book = await readBook(root);
    expect(book.media).toEqual(['media/a.png', 'media/b.png']);
    expect((await said()).map(([rule]) => rule)).toEqual(['file-unread', 'file-unread']);
  });

  it('of ABC may be so large', async () => {
    const file = join(house, 'big.abc');
    writeFileSync(file, '');
    truncateSync(file, limits.abcSize + 1);
    const options = { root, files: [file], type: null, rights: null, learnedFrom: null };
    const imported = await importTunes({ ...options, dryRun: true });
    expect(imported.problems.map(p => p.rule)).toEqual(['abc-past-limit']);
    const explained = await explainFile(file, {});
    expect(explained.problems.map(p => p.rule)).toEqual(['abc-past-limit']);
    broken.add('abc-past-limit');
  });
});

describe('a path in a page', () => {
  it.each([
    '../../secret.md',
    '../../../etc/passwd',
    '/etc/passwd',
    '..\\..\\secret.md',
    '%2e%2e/%2e%2e/secret.md',
    '..%2f..%2fsecret.md',
    '..%5c..%5csecret.md',
    'x/../../../secret.md',
    'file:///etc/passwd',
    '\\\\server\\share',
    '//server/share',
    '../media/../../secret.md',
    '%252e%252e/%252e%252e/secret.md',
    './/../..//secret.md',
    'C:\\secret.md',
    '../../secret.md%00.png',
  ])('does not climb out: %s', written => {
    const page = `---\ntitle: T\n---\n\n[words](<${written.replaceAll('\\', '\\\\')}>) ![picture](<${written.replaceAll('\\', '\\\\')}>)\n\n\`\`\`abc\nX:1\nT:A\nK:D\nA|\n\`\`\`\n\n::clip[x]{src="${written}" of=a start=0:01 tempo=90}\n`;
    const texts = new Map([
      ['bowbook.yaml', 'title: T\n'],
      ['tunes/a.md', page],
    ]);
    const { problems, tunePages } = bookOf('b', { texts, media: ['media/a.mp3'] });
    const placed = problems.filter(p => p.place?.file === 'tunes/a.md');
    expect(placed.length).toBeGreaterThanOrEqual(3);
    expect(JSON.stringify(tunePages.map(p => [p.body, p.blocks]))).not.toMatch(
      /"(?:href|src)":"[^"]/,
    );
  });
});

it('every message about a limit was made by what breaks it', () => {
  // A book of twenty thousand files is made by no test; its message is worded like the others.
  const untried = Object.keys(limitMessages).filter(rule => !broken.has(rule));
  expect(untried).toEqual(['files-past-limit']);
});

it('the page about limits says each of them, and no other', () => {
  const page = readFileSync(join(import.meta.dirname, '../../docs/limits.md'), 'utf8');
  const said = [...page.matchAll(/^\| `(\w+)` \| ([\d,]+)/gm)].map(
    m => [m[1], Number(m[2]?.replaceAll(',', ''))] as const,
  );
  expect(Object.fromEntries(said)).toEqual(limits);
});
