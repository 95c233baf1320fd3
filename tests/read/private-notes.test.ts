import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyHtml } from '../../src/read/body-html.ts';
import type { Book, Page } from '../../src/read/book.ts';
import { bookOf } from '../../src/read/book-of.ts';

/**
 * A private note must never be published. Whatever is done to its fences, one of two things holds:
 * the book has an error, so that nothing is written; or the secret stands in a private block. In
 * both, no body outside a private block has a word of it.
 */
const secret = 'MAGPIE';

const read = (text: string): Book =>
  bookOf('book', {
    texts: new Map([
      ['bowbook.yaml', 'title: Tuesday tunes\n'],
      ['lessons/2026-09-15-first.md', text],
    ]),
    media: [],
  });

const hasError = (book: Book): boolean => book.problems.some(p => p.severity === 'error');

/** Everything of a page that any stage may print, private blocks left out. */
function published(page: Page): string {
  const blocks = page.blocks.flatMap(block => {
    if (block.kind === 'private') return [];
    const shown = block;
    return 'body' in shown
      ? [JSON.stringify({ ...shown, body: null }), bodyHtml(shown.body, () => '')]
      : [JSON.stringify(shown)];
  });
  return [page.title, page.summary, bodyHtml(page.body, () => ''), ...blocks].join('\n');
}

const leaks = (book: Book): boolean => book.lessons.some(page => published(page).includes(secret));

const kept = (book: Book): boolean =>
  book.lessons.some(page =>
    page.blocks.some(b => b.kind === 'private' && bodyHtml(b.body, () => '').includes(secret)),
  );

const tune = '```abc\nX:1\nT:Kettle\nK:D\nDEFG|\n```\n';

/** Forms that are read as private notes, and rightly. */
const sound: Readonly<Record<string, string>> = {
  plain: `:::private\n${secret}\n:::\n`,
  'with spaces after the fences': `:::private  \n${secret}\n:::  \n`,
  'with Windows line ends': `Hello\r\n\r\n:::private\r\n${secret}\r\n:::\r\n`,
  'with old Macintosh line ends': `Hello\r\r:::private\r${secret}\r:::\r`,
  'after a byte order mark': `\uFEFF:::private\n${secret}\n:::\n`,
  'with more colons': `:::::private\n${secret}\n:::::\n`,
  'straight after a paragraph': `Hello\n:::private\n${secret}\n:::\nBye\n`,
  'straight after a table': `| a |\n|---|\n| b |\n:::private\n${secret}\n:::\n`,
  'inside an anchor': `${tune}\n::::anchor{#end bars=A1}\nWhy\n\n:::private\n${secret}\n:::\n::::\n`,
  'a private note inside another': `::::private\n${secret}\n\n:::private\n${secret}\n:::\n${secret}\n::::\n`,
  'code in it': `:::private\n\`\`\`\n${secret}\n\`\`\`\n:::\n`,
  'a list, a quotation and a heading in it': `:::private\n# ${secret}\n\n- ${secret}\n\n> ${secret}\n:::\n`,
  'a footnote in it': `:::private\nHm[^1]\n\n[^1]: ${secret}\n:::\n`,
  'in the title of a link': `[a]: http://b.example/ "\n:::private\n${secret}\n:::\n"\n`,
  'empty braces': `:::private{}\n${secret}\n:::\n`,
  'at the end of the file without a line end': `:::private\n${secret}\n:::`,
};

/** Forms that are not sound, and must be errors. */
const unsound: Readonly<Record<string, string>> = {
  'never closed': `:::private\n${secret}\n`,
  'never closed, nothing after the name': `Hello\n\n:::private`.concat(`\n${secret}`),
  'closed early by a block inside': `${tune}\n:::private\nfirst\n:::anchor{#end bars=A1}\nwhy\n:::\n${secret}\n:::\n`,
  'closed early by a private note inside': `:::private\nfirst\n:::private\nsecond\n:::\n${secret}\n:::\n`,
  'closed twice': `:::private\nfirst\n:::\n${secret}\n:::\n`,
  'never closed before the next block': `${tune}\n:::private\n${secret}\n\n:::anchor{#end bars=A1}\nwhy\n:::\n`,
  'closed by a shorter fence': `::::private\n${secret}\n:::\n`,
  'closed by a longer fence': `:::private\n${secret}\n::::\n`,
  'a longer block inside': `${tune}\n:::private\nfirst\n::::anchor{#end bars=A1}\nwhy\n::::\n${secret}\n:::\n`,
  'inside an anchor with as many colons': `${tune}\n:::anchor{#end bars=A1}\nwhy\n:::private\n${secret}\n:::\n:::\n`,
  'a fence in code inside': `:::private\n\`\`\`\n:::\n${secret}\n\`\`\`\n:::\n`,
  'code inside never closed': `:::private\n\`\`\`\n${secret}\n:::\n`,
  'after code that is never closed': `\`\`\`abc\nX:1\nT:Kettle\nK:D\nD|\n\n:::private\n${secret}\n:::\n`,
  'after code closed only by the next': `\`\`\`abc\nX:1\nT:K\nK:D\nD|\n\n:::private\n${secret}\n:::\n\n\`\`\`abc\nX:1\nT:L\nK:D\nD|\n\`\`\`\n`,
  'after other code closed only by the next': `\`\`\`text\nfoo\n\n:::private\n${secret}\n:::\n\n\`\`\`text\nbar\n\`\`\`\n`,
  'in code that was closed too late, twice': `\`\`\`\nfoo\n\n:::private\n${secret}\n:::\n\n\`\`\`\nbar\n`,
  'after wavy code that is never closed': `~~~\nfoo\n\n:::private\n${secret}\n:::\n`,
  'in a list': `- one\n\n  :::private\n  ${secret}\n  :::\n`,
  'opening a list item': `- :::private\n  ${secret}\n  :::\n`,
  'opening a numbered item': `1. :::private\n   ${secret}\n   :::\n`,
  'in a quotation': `> :::private\n> ${secret}\n> :::\n`,
  'in a quotation that ends early': `> :::private\n${secret}\n> :::\n`,
  'in a footnote': `Hm[^1]\n\n[^1]: foo\n\n    :::private\n    ${secret}\n    :::\n`,
  'indented by a space': ` :::private\n${secret}\n :::\n`,
  'its end indented': `:::private\n${secret}\n   :::\n`,
  'its end indented as code': `:::private\nfirst\n    :::\n${secret}\n:::\n`,
  'indented by a tab': `\t:::private\n${secret}\n:::\n`,
  'its end after a tab': `:::private\n${secret}\n\t:::\n`,
  'a space before the name': `::: private\n${secret}\n:::\n`,
  'a space before the braces': `:::private {}\n${secret}\n:::\n`,
  'a capital': `:::Private\n${secret}\n:::\n`,
  'all capitals': `:::PRIVATE\n${secret}\n:::\n`,
  'misspelt short': `:::privat\n${secret}\n:::\n`,
  'misspelt swapped': `:::pirvate\n${secret}\n:::\n`,
  'misspelt long': `:::privates\n${secret}\n:::\n`,
  'two colons': `::private\n${secret}\n::\n`,
  'two colons and a label': `::private[${secret}]\n`,
  'one colon and a label': `:private[${secret}]\n`,
  'one colon': `:private\n${secret}\n:\n`,
  'words in the line': `Note :::private ${secret} :::\n`,
  'words after the name': `:::private ${secret}\nhm\n:::\n`,
  'a label': `:::private[${secret}]\nhm\n:::\n`,
  'braces never closed': `:::private{\n${secret}\n:::\n`,
  'braces with a broken value': `:::private{a=}\n${secret}\n:::\n`,
  'an open quote': `:::private{a="b}\n${secret}\n:::\n`,
  'an attribute': `:::private{for=me}\n${secret}\n:::\n`,
  'a full stop after the name': `:::private.\n${secret}\n:::\n`,
  'a colon after the name': `:::private:\n${secret}\n:::\n`,
  escaped: `\\:::private\n${secret}\n:::\n`,
  'a colon as a character reference': `&#58;::private\n${secret}\n`,
  'spaced colons': `: : : private\n${secret}\n: : :\n`,
  semicolons: `;;;private\n${secret}\n;;;\n`,
  'wide colons': `：：：private\n${secret}\n：：：\n`,
  'a hidden character before it': `\u200B:::private\n${secret}\n:::\n`,
  'a hidden character in it': `:\u200B::private\n${secret}\n:::\n`,
  'a no-break space before it': `\u00A0:::private\n${secret}\n:::\n`,
  'a no-break space after the end': `:::private\nfirst\n:::\u00A0\n${secret}\n:::\n`,
  'in a block of HTML': `<div>\n:::private\n${secret}\n:::\n</div>\n`,
  'its end swallowed by HTML': `:::private\n<div>\n${secret}\n:::\n\n${secret}\n</div>\n:::\n`,
  'in a comment': `<!--\n:::private\n-->\n${secret}\n:::\n`,
  'half in a comment': `hm <!-- foo\n\n${secret} -->\n`,
  'in a table': `| a |\n|---|\n| :::private ${secret} ::: |\n`,
  'as a heading': `:::private\n===\n${secret}\n`.concat(':::\n:::\n'),
  'in a heading': `# :::private\n${secret}\n`,
  'explained in it, asked from outside': `:::private\n[^1]: ${secret}\n:::\n\nHm[^1]\n`,
  'an address in it, asked from outside': `:::private\n[x]: http://${secret}.example/\n:::\n\n[Hm][x]\n`,
  'a tune in it': `:::private\n\`\`\`abc\nX:1\nT:${secret}\nK:D\nD|\n\`\`\`\n:::\n`,
  'a tune with a story in it': `::::private\n:::tune{#kettle}\n${secret}\n\n${tune}:::\n::::\n`,
  'front matter never closed': `---\ntitle: First\n\n:::private\n${secret}\n:::\n`,
  'bars of colons': `:::\nprivate\n${secret}\n:::\n`,
  'an unknown block around it': `::::box\n:::private\n${secret}\n:::\n::::\n`,
  'wrapped in asterisks': `*:::private*\n${secret}\n`,
  'code in a list over its end': `- \`\`\`\n:::private\n${secret}\n:::\n\`\`\`\n`,
};

describe('private notes that are sound', () => {
  test.each(Object.entries(sound))('%s', (_name, text) => {
    const book = read(text);
    expect(book.problems).toEqual([]);
    expect(leaks(book)).toBe(false);
    expect(kept(book)).toBe(true);
  });
});

describe('private notes that are not sound', () => {
  test.each(Object.entries(unsound))('%s', (_name, text) => {
    const book = read(text);
    expect(leaks(book)).toBe(false);
    expect(hasError(book)).toBe(true);
  });
});

test('the check itself sees a leak', () => {
  const book = read(`Hello ${secret}\n`);
  expect(hasError(book)).toBe(false);
  expect(leaks(book)).toBe(true);
});

test('fences in fenced code stay code', () => {
  const book = read('````md\n:::private\nan example\n:::\n````\n\n`:::private`\n');
  expect(book.problems).toEqual([]);
  expect(bodyHtml(book.lessons[0]?.body ?? fail(), () => '')).toContain(':::private\nan example');
});

/** Lines from which books with one private note are shuffled together. */
const noise = [
  ':::',
  '::::',
  ':::::',
  '',
  'Hello',
  '- one',
  '> two',
  '    three',
  '```',
  '````',
  '~~~',
  '```abc',
  '<div>',
  '<!--',
  '-->',
  ':::private',
  '::::private',
  ':::anchor{#end of=kettle bars=A1}',
  '::::anchor{#end of=kettle bars=A1}',
  ':::privat',
  '::: private',
  ' :::',
  '\t:::',
  '> :::',
  '- :::',
  '  :::private',
  '::map',
  '| a | b |',
  '|---|---|',
  '[^1]: note',
  '[x]: http://a.example/ "',
  '===',
  '---',
];

type Change =
  | { readonly kind: 'add'; readonly line: string; readonly at: number }
  | { readonly kind: 'drop' | 'double' | 'indent' | 'quote'; readonly at: number };

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constant('add' as const), line: fc.constantFrom(...noise), at: fc.nat(40) }),
  fc.record({
    kind: fc.constantFrom('drop' as const, 'double' as const, 'indent' as const, 'quote' as const),
    at: fc.nat(40),
  }),
);

/** Changes to any line but the secret's own, which stays where it was written. */
function mutated(lines: readonly string[], changes: readonly Change[]): readonly string[] {
  return changes.reduce<readonly string[]>((now, c) => {
    const at = c.at % (now.length + 1);
    if (c.kind === 'add') return [...now.slice(0, at), c.line, ...now.slice(at)];
    const line = now[at];
    if (line === undefined || line.includes(secret)) return now;
    const made = { drop: [], double: [line, line], indent: [`  ${line}`], quote: [`> ${line}`] };
    return [...now.slice(0, at), ...made[c.kind], ...now.slice(at + 1)];
  }, lines);
}

test('no change to the lines around a private note publishes it', () => {
  const books = [
    ['Hello', '', ':::private', secret, ':::', '', 'Bye'],
    [
      ...tune.split('\n'),
      '::::anchor{#end bars=A1}',
      'Why',
      '',
      ':::private',
      secret,
      ':::',
      '::::',
    ],
    [
      ':::private',
      '- one',
      '',
      '```',
      'code',
      '```',
      secret,
      ':::',
      'Bye',
      '',
      ...tune.split('\n'),
    ],
    ['::::private', ':::private', 'x', ':::', secret, '::::', 'Hello', '```', 'y', '```'],
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...books),
      fc.array(change, { minLength: 1, maxLength: 3 }),
      (lines, changes) => {
        const text = mutated(lines, changes);
        const book = read(text.join('\n'));
        if (hasError(book)) expect(leaks(book)).toBe(false);
        // A note whose opening line is gone, or that a sound new fence has closed, is no longer one.
        else if (leaks(book)) expect(opensBefore(text)).toBe(false);
      },
    ),
    { numRuns: 2000 },
  );
});

/**
 * Whether the secret was written inside a private note, to someone who reads fences as any teacher
 * would: from the line that names it to the next that is colons alone.
 */
function opensBefore(lines: readonly string[]): boolean {
  const above = lines.slice(0, lines.indexOf(secret));
  const opened = above.findLastIndex(line => /^\W*private$/.test(line));
  return opened >= 0 && !above.slice(opened).some(line => /^[\s>-]*:{3,}\s*$/.test(line));
}

function fail(): never {
  throw new Error('the book has no lesson');
}
