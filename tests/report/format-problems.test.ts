import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Facts, problem } from '../../shared/problem.ts';
import { wordedRules, wordProblem } from '../../shared/words/words.ts';
import { excerpt } from '../../src/report/excerpt.ts';
import { countProblems, formatProblems } from '../../src/report/format-problems.ts';

const root = join(import.meta.dirname, '../..');

const at = (line: number, column: number) => ({ file: 'lessons/first.md', line, column });

test('a problem is placed, named, worded and shown, with the page that says more', () => {
  const found = problem('attribute-unknown', 'error', at(2, 14), {
    facts: { block: ':::anchor', name: 'satrt' },
    actual: 'satrt',
    expected: ['id', 'of', 'bars', 'start'],
    nearest: 'start',
  });
  expect(formatProblems([found], () => '# First\n:::anchor{#a satrt=up}\n')).toBe(
    [
      'lessons/first.md',
      '',
      '  Line 2, column 14: error, attribute-unknown',
      '    Unexpected `satrt` on `:::anchor`, expected `id`, `of`, `bars` or `start`.',
      '    Did you mean `start`?',
      '       2 | :::anchor{#a satrt=up}',
      '         |              ^',
      '    More: docs/rules/attribute-unknown.md',
      '',
      '1 error',
      '',
    ].join('\n'),
  );
});

test('problems are grouped by file, in the order of their places, those of the whole book first', () => {
  const rule = 'fence-stray';
  const said = formatProblems(
    [
      problem(rule, 'warning', at(9, 1)),
      problem(rule, 'error', { ...at(1, 1), file: 'tunes/slip.md' }),
      problem(rule, 'error', at(2, 5)),
      problem(rule, 'note', null),
      problem(rule, 'error', at(2, 1)),
    ],
    () => null,
  );
  expect(said.match(/^(?:\S.*| {2}\S.*)$/gm)).toEqual([
    'The book as a whole',
    '  note, fence-stray',
    'lessons/first.md',
    '  Line 2, column 1: error, fence-stray',
    '  Line 2, column 5: error, fence-stray',
    '  Line 9, column 1: warning, fence-stray',
    'tunes/slip.md',
    '  Line 1, column 1: error, fence-stray',
    '3 errors, 1 warning, 1 note',
  ]);
});

test('a file is read once, however much is said of it', () => {
  const asked: string[] = [];
  const problems = [2, 3, 4].map(line => problem('fence-stray', 'error', at(line, 1)));
  formatProblems(problems, file => {
    asked.push(file);
    return null;
  });
  expect(asked).toEqual(['lessons/first.md']);
});

test('the caret stands under its column in long lines, after tabs, and signs are made safe', () => {
  const text = `${'x'.repeat(200)}HERE${'y'.repeat(200)}\n\t\tTAB\n\u001b[31mred`;
  const caret = (line: number, column: number): string => {
    const [shown = '', below = ''] = excerpt({ line, column }, text);
    return shown.slice(below.indexOf('^'), below.indexOf('^') + 4);
  };
  expect(caret(1, 201)).toBe('HERE');
  expect(caret(2, 3)).toBe('TAB');
  expect(excerpt({ line: 3, column: 1 }, text).join()).not.toContain('\u001b');
  expect(excerpt({ line: 9, column: 1 }, text)).toEqual([]);
});

test('no problems, no words', () => {
  expect(formatProblems([], () => null)).toBe('');
  expect(countProblems([])).toBe('no problems');
});

test('every rule has two sentences', () => {
  // Whatever fact a rule asks for, it has; two name a sentence of a table.
  const named: Facts = { why: 'no-fork', what: 'notes' };
  const facts: Facts = new Proxy(named, { get: (_, name) => named[String(name)] ?? 1 });
  expect(wordedRules.length).toBeGreaterThan(40);
  for (const rule of wordedRules) {
    const { message, mend } = wordProblem(problem(rule, 'error', at(1, 1), { actual: 'x', facts }));
    expect(message, rule).toMatch(/[.?]$/);
    expect(mend, rule).toMatch(/[.?]$/);
  }
});

test('no two rooms word the same rule', async () => {
  const rooms = readdirSync(join(root, 'shared/words/en')).filter(file => file.endsWith('.ts'));
  const tables = await Promise.all(
    rooms.map(async file => {
      const exported: Record<string, object> = await import(join(root, 'shared/words/en', file));
      return Object.entries(exported).flatMap(([name, table]) =>
        name.endsWith('Messages') ? Object.keys(table) : [],
      );
    }),
  );
  const rules = tables.flat();
  expect([...rules].sort()).toEqual([...wordedRules].sort());
  expect(new Set(rules).size).toBe(rules.length);
});

test('every rule that the code can break has words', () => {
  const rulesIn = (folder: string, makers: string): readonly string[] =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter(file => file.endsWith('.ts'))
      .map(file => readFileSync(join(root, folder, file), 'utf8'))
      .flatMap(source => [
        ...source.matchAll(new RegExp(`\\b(?:${makers})\\(\\s*'([a-z-]+)'`, 'g')),
      ])
      .map(found => found[1] ?? '');
  // The readers of Markdown and of ABC make their problems by short functions of their own.
  const own = 'inProse|fault|drop|say';
  const rules = [
    ...['src', 'shared'].flatMap(folder => rulesIn(folder, 'problem')),
    ...['src/read', 'src/abc'].flatMap(folder => rulesIn(folder, own)),
  ];
  expect(rules.length).toBeGreaterThan(60);
  expect(rules.filter(rule => !wordedRules.includes(rule))).toEqual([]);
});

test('a rule without words is a defect of ours', () => {
  expect(() => wordProblem(problem('no-such-rule', 'error', null))).toThrow(/no-such-rule/);
  expect(() => wordProblem(problem('constructor', 'error', null))).toThrow(/constructor/);
});
