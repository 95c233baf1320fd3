import fc from 'fast-check';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { plainPage } from '../../src/read/plain-page.ts';

/** The second reader: Markdown as the whole program reads it, by remark alone. */
const remark = unified()
  .use(remarkParse)
  .use(remarkFrontmatter, ['yaml'])
  .use(remarkGfm, { singleTilde: false })
  .use(remarkDirective)
  .freeze();

const page = (...lines: readonly string[]): string => lines.join('\n');
const tune = page(':::tune{#fog-signal start=up}', '```abc', 'X:1', 'K:G', '```', ':::');

/** Lines that are plain, lines that nearly are, and lines that mean something else. */
const oddLines = [
  ...['', ' ', 'X:1', 'K:G', '::', 'a ::: b', '  indented', '% a comment', '|: A2 :|', '\tA'],
  ...['---', '--- ', '----', ' ---', 'title: Fog', '```', '``` ', ' ```', '    ```', '````', '~~~'],
  ...[
    '```abc',
    '``` abc',
    '```ABC',
    '```abc meta',
    '```md',
    ':::',
    '::::',
    ':::: ',
    ' :::',
    ':::x',
  ],
  ...[
    ':::tune',
    ':::tune ',
    '::tune{of=a}',
    ':::private',
    '::::tune{#b}',
    'words',
    '> said',
    '- a',
  ],
  ...['    code', '<!--', '-->', '<pre>', '[a]: b', '[^1]: c', '# Title', '===', '| a |', '\0'],
];

const attributes = fc.oneof(
  fc.constantFrom('', '{#a}', '{#a-b_c}', '{start=up #a}', '{#a #b}', '{id="x y" rights=own}'),
  fc.constantFrom('{}', '{ #a}', '{#a  #b}', '{.a}', '{class=a class=b}', '{#a.b}', '{a}', '{-=b}'),
  fc.constantFrom(
    '[words]',
    '[words]{#a}',
    '{#a}x',
    '{#a} ',
    '{a="&amp;"}',
    '{a="}"}',
    '{a="b"c=d}',
  ),
  fc.string({ unit: 'binary' }).map(value => `{id="${value}"}`),
);

const abc = fc.array(
  fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom('X:1', 'T:Fog', 'A2 Bc|', '', '|::', '  A') },
    { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
  ),
  { maxLength: 5 },
);
const blanks = fc.array(fc.constant(''), { maxLength: 2 });

const block = fc
  .tuple(fc.constantFrom(':::', '::::'), attributes, blanks, abc, blanks, fc.boolean())
  .map(([colons, written, before, lines, after, bare]) => {
    const fence = ['```abc', ...lines, '```'];
    return bare ? fence : [`${colons}tune${written}`, ...before, ...fence, ...after, colons];
  });

const front = fc.constantFrom(
  [],
  [],
  ['---', 'title: Fog', '', 'start: up', '---'],
  ['---', '---'],
);

/** A page of tunes, in half of the cases with a line put in, taken out or put for another. */
const pages = fc
  .tuple(
    front,
    fc.array(fc.tuple(block, blanks), { maxLength: 3 }),
    fc.option(
      fc.tuple(fc.nat(), fc.nat(1), fc.array(fc.constantFrom(...oddLines), { maxLength: 1 })),
    ),
  )
  .map(([head, blocks, change]) => {
    const lines = [...head, ...blocks.flat(2)];
    if (change) lines.splice(change[0] % (lines.length + 1), change[1], ...change[2]);
    return page(...lines);
  });

describe('a page of nothing but tunes', () => {
  it.each([
    ['a tune', tune],
    ['an empty line at the end', `${tune}\n`],
    ['several', page('', tune, '', tune, '```abc', 'X:2', '```', '')],
    ['front matter', page('---', 'title: Fog', '---', tune)],
  ])('is told without the parser: %s', (_, text) => {
    expect(plainPage(text)).toStrictEqual(remark.parse(text));
  });

  it.each([
    ['words', page(tune, '', 'Slowly.')],
    ['a story in the block', page(':::tune', 'Slowly.', '```abc', '```', ':::')],
    ['a block of another kind', page(':::private', '```abc', 'X:1', '```', ':::')],
    ['a fence that is not closed', page(':::tune', '```abc', 'X:1', ':::')],
    ['a fence in ABC', page('```abc', ':::', '```')],
    ['nothing', ''],
  ])('is left to the parser with %s', (_, text) => {
    expect(plainPage(text)).toBeNull();
  });

  it('has the tree that remark makes, to the last offset', () => {
    let plain = 0;
    fc.assert(
      fc.property(pages, text => {
        const tree = plainPage(text);
        if (tree === null) return;
        plain += 1;
        expect(tree).toStrictEqual(remark.parse(text));
      }),
      { numRuns: 2000, seed: 1 },
    );
    expect(plain).toBeGreaterThan(400);
  });
});
