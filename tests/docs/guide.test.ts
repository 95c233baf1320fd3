import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drillKinds } from '../../shared/drills/drill.ts';
import { tuneTypes } from '../../shared/music/tune.ts';
import type { Problem } from '../../shared/problem.ts';
import { standoutNames } from '../../shared/sections/standout-names.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { fillTemplate } from '../../src/begin/fill-template.ts';
import { type StudiedBook, studyTunes } from '../../src/pipeline/pipeline.ts';
import type { BlockBase, BlockSpec } from '../../src/read/blocks/block-spec.ts';
import { blockSpecs } from '../../src/read/blocks/block-specs.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { blockSign } from '../../src/read/directive.ts';
import { readSettings } from '../../src/read/read-settings.ts';

/** The teacher's guide, held to what the program reads and says. */
const root = join(import.meta.dirname, '../..');
const guide = readFileSync(join(root, 'docs/writing-a-book.md'), 'utf8');

/** Without its blocks of code. */
const prose = guide.replace(/^(`{3,}).*\n[\s\S]*?^\1$/gm, '');

/** What stands under a heading, or under a line of its own, as far as the next heading. */
function under(line: string): string {
  const [, after] = prose.split(`\n${line}\n`);
  if (after === undefined) throw new Error(`the guide has no line "${line}"`);
  return after.split(/\n#+ /)[0] ?? '';
}

/** Names in the first column of the first table of a piece of text, below its head. */
function namesIn(text: string): readonly string[] {
  const table = /^\|.*\n((?:\|.*\n)+)/m.exec(text)?.[1] ?? '';
  return [...table.matchAll(/^\|((?: `[\w-]+`,?)+) \|/gm)].flatMap(([, cell = '']) =>
    [...cell.matchAll(/`([\w-]+)`/g)].map(([, name = '']) => name),
  );
}

const blocks = blockSpecs.map((spec: BlockSpec<BlockBase>) => ({
  sign: blockSign(spec.form, spec.name),
  spec,
}));

describe('the guide names everything that can be written, and nothing else', () => {
  it.each(blocks)('$sign', ({ sign, spec }) => {
    const text = under(`### \`${sign}\``);
    expect([...namesIn(text)].sort()).toEqual([...spec.attributes].sort());
    for (const name of spec.required) {
      expect(text).toMatch(new RegExp(`^\\| \`${name}\` \\|.*must be there`, 'm'));
    }
    for (const name of spec.flags ?? []) {
      expect(text).toMatch(new RegExp(`^\\| \`${name}\` \\|.*without a value`, 'm'));
    }
    expect(/[Ii]n square brackets|`:stroke\[/.test(text)).toBe(spec.label === true);
  });

  it('has no heading of a block that is not', () => {
    const headed = [...prose.matchAll(/^### `(:+\w+)`$/gm)].map(m => m[1]);
    expect(headed.sort()).toEqual(blocks.map(b => b.sign).sort());
  });

  /** The names that the program would have expected in place of one that it does not know. */
  const expected = (problems: readonly Problem[]): readonly string[] => {
    expect(problems.map(p => p.rule)).toEqual(['setting-unknown']);
    return [...(problems[0]?.expected ?? [])].sort();
  };
  const settingsUnder = (yaml: string) =>
    expected(readSettings({ file: 'bowbook.yaml', text: yaml }).problems);

  it.each([
    ['### Settings', 'zzz: 1'],
    ['Of `levels`:', 'levels: { beginner: { zzz: 1 } }'],
    [
      'Of `tempi`, in beats a minute from 10 to 400; what you leave out stays:',
      'tempi: { reel: { zzz: 1 } }',
    ],
  ])('%s', (line, yaml) => {
    expect([...namesIn(under(line))].sort()).toEqual(settingsUnder(yaml));
  });

  it('presets and colours', () => {
    const presets = under('### Settings').split('\nOf `presets`;')[1] ?? '';
    expect([...namesIn(presets)].sort()).toEqual(settingsUnder('presets: { a: { zzz: 1 } }'));
    const [row = ''] = /^\| `colours` \|.*$/m.exec(prose) ?? [];
    for (const name of settingsUnder('colours: { zzz: "#112233" }')) {
      expect(row).toContain(`\`${name}\``);
    }
  });

  it('the head of a page', () => {
    const texts = new Map([
      ['bowbook.yaml', 'title: Thursday'],
      ['pages/a.md', '---\nzzz: 1\n---\n'],
    ]);
    const { problems } = bookOf('book', { texts, media: [] });
    expect([...namesIn(under('### The head of a page'))].sort()).toEqual(expected(problems));
  });

  it('every kind of drill, type of tune and fact that stands out', () => {
    const kinds = under('### Drills');
    expect([...namesIn(kinds)].sort()).toEqual([...drillKinds].sort());
    for (const type of tuneTypes) expect(under('### `:::tune`')).toContain(`\`${type}\``);
    for (const standout of standoutNames)
      expect(under('### `:::anchor`')).toContain(`\`${standout}\``);
  });
});

/** Blocks of code whose first line names a file of a book. */
const files = new Map(
  [...guide.matchAll(/^(`{3,})\w+ (\S+\.\w+)\n([\s\S]*?)^\1$/gm)].map(m => [
    m[2] ?? '',
    m[3] ?? '',
  ]),
);
const chalk = readFileSync(join(root, 'templates/begin/tunes/chalk-on-the-slipway.md'), 'utf8');

/** The guide's lesson in a new book, beside the tune that `bowbook begin` writes, studied. */
function studied(others: Readonly<Record<string, string>> = {}): Promise<StudiedBook> {
  const begun = {
    'bowbook.yaml': 'title: Thursday fiddles\n',
    'tunes/chalk-on-the-slipway.md': fillTemplate(chalk, {}),
  };
  const texts = new Map([...files, ...Object.entries({ ...begun, ...others })]);
  const media = ['stove.mp3', 'slow.mp3', 'stove-october.mp3', 'quay.jpg'].map(
    name => `media/${name}`,
  );
  return studyTunes(bookOf('book', { texts, media }), () => {});
}

describe('the guide says what the program says', () => {
  const lesson = 'lessons/2026-09-24-the-warm-stove.md';

  it('of its lesson, to the letter', async () => {
    expect([...files.keys()].sort()).toEqual(['bowbook.yaml', lesson]);
    const { problems } = await studied();
    expect(problems.map(p => [p.rule, p.place?.file])).toEqual([['arrival-missed', lesson]]);
    const [missed] = problems;
    if (!missed) throw new Error('the lesson arrives');
    const { message, mend } = wordProblem(missed);
    const { line, column } = missed.place ?? { line: 0, column: 0 };
    const source = files.get(lesson)?.split('\n')[line - 1];
    for (const words of [message, mend, `Line ${line}, column ${column}:`, `${line} | ${source}`]) {
      expect(guide.includes(words), words).toBe(true);
    }
  });

  it('of the way there, in numbers', async () => {
    const stove = (await studied()).tunes.find(t => t.block.id === 'the-warm-stove')?.study;
    const [plan] = stove?.bowing.anchors[0]?.asked[0]?.leadIns ?? [];
    if (!plan) throw new Error('the lesson has no plan');
    const { notes, strokes, groupings, arriving, allowed, allowedArriving } = plan;
    const said = guide.replace(/\n>? ?/g, ' ');
    expect(said).toContain(`${notes.length} notes in ${strokes} strokes`);
    expect(said).toContain(`${groupings} ways to share these notes out`);
    expect(said).toContain(`and ${arriving} of them arrive`);
    expect(said).toContain(`Within what this level plays, ${allowedArriving} of ${allowed}.`);
  });

  it('it arrives without the slur of bar 1', async () => {
    const bar = '|:DF AF|';
    expect(guide).toContain(`\`${bar}\``);
    const mended = files.get(lesson)?.replace('|:DF (AF)|', bar) ?? '';
    expect(mended).not.toBe(files.get(lesson));
    expect((await studied({ [lesson]: mended })).problems).toEqual([]);
  });

  it('its settings are read without a complaint', () => {
    const text = files.get('bowbook.yaml') ?? '';
    expect(text).toContain('preset-for:');
    expect(readSettings({ file: 'bowbook.yaml', text }).problems).toEqual([]);
  });

  it('its short examples read without a complaint', async () => {
    const examples = [...guide.matchAll(/^```markdown\n([\s\S]*?)^```$/gm)].map(m => m[1] ?? '');
    expect(examples.length).toBeGreaterThan(4);
    const page = `---\ntitle: More\ndate: 2026-10-01\n---\n\n${examples.join('\n')}\n`;
    const { problems } = await studied({ 'lessons/2026-10-01-more.md': page });
    expect(problems.map(p => p.rule)).toEqual(['arrival-missed']);
  });
});

describe.each(['README.md', 'docs/writing-a-book.md'])('%s', file => {
  const text = readFileSync(join(root, file), 'utf8').replace(/^(`{3,}).*\n[\s\S]*?^\1$/gm, '');
  const links = [...text.replace(/`[^`\n]*`/g, '').matchAll(/(!?)\[([^\]]*)\]\(([^)\s]+)\)/g)];

  it('links to files and headings that are there', () => {
    // A heading's address, as common Markdown hosts make it.
    const headings = [...text.matchAll(/^#+ (.+)$/gm)].map(([, title = '']) =>
      title
        .toLowerCase()
        .replace(/[^\w\s-]/g, '')
        .replaceAll(' ', '-'),
    );
    const lost = links
      .map(([, , , to = '']) => to)
      .filter(to => !/^https:/.test(to))
      .filter(to =>
        to.startsWith('#')
          ? !headings.includes(to.slice(1))
          : !existsSync(join(root, file, '..', to)),
      );
    expect(lost).toEqual([]);
  });

  it('says its pictures in words', () => {
    const pictures = links.filter(([, sign]) => sign === '!');
    expect(pictures.length).toBeGreaterThan(0);
    for (const [, , words = ''] of pictures) expect(words.length).toBeGreaterThan(30);
  });
});

it('no picture is heavy, and each is shown', () => {
  const folder = join(root, 'docs/pictures');
  for (const name of readdirSync(folder)) {
    expect(statSync(join(folder, name)).size, name).toBeLessThan(125_000);
    expect(guide, name).toContain(`(pictures/${name})`);
  }
});
