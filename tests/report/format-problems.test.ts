import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Facts, problem } from '../../shared/problem.ts';
import { abcMessages } from '../../shared/words/en/abc.ts';
import { bowingMessages } from '../../shared/words/en/bowing.ts';
import { buildingMessages } from '../../shared/words/en/building.ts';
import { mapMessages } from '../../shared/words/en/map.ts';
import { printMessages } from '../../shared/words/en/print.ts';
import { readingMessages } from '../../shared/words/en/reading.ts';
import { wordedRules, wordProblem } from '../../shared/words/words.ts';
import { countProblems, formatProblems } from '../../src/report/format-problems.ts';

const at = (line: number, column: number) => ({ file: 'lessons/first.md', line, column });

test('a problem is placed, named, worded and shown', () => {
  const found = problem('attribute-unknown', 'error', at(2, 14), {
    facts: { block: ':::anchor', name: 'satrt' },
    actual: 'satrt',
    expected: ['id', 'of', 'bars', 'start'],
    nearest: 'start',
  });
  expect(formatProblems([found], () => '# First\n:::anchor{#a satrt=up}\n')).toBe(
    [
      'lessons/first.md:2:14  error  attribute-unknown',
      '  Unexpected `satrt` on `:::anchor`, expected `id`, `of`, `bars` or `start`.',
      '  Did you mean `start`?',
      '      2 | :::anchor{#a satrt=up}',
      '        |              ^',
      '',
      '1 error',
      '',
    ].join('\n'),
  );
});

test('problems come in the order of their places, those of the whole book first', () => {
  const rule = 'fence-stray';
  const said = formatProblems(
    [
      problem(rule, 'warning', at(9, 1)),
      problem(rule, 'error', at(2, 5)),
      problem(rule, 'note', null),
      problem(rule, 'error', at(2, 1)),
    ],
    () => null,
  );
  expect(said.match(/^(?:lessons\S*|note)/gm)).toEqual([
    'note',
    'lessons/first.md:2:1',
    'lessons/first.md:2:5',
    'lessons/first.md:9:1',
  ]);
  expect(said).toMatch(/\n2 errors, 1 warning, 1 note\n$/);
});

test('the caret stands under its column in long lines, after tabs, and signs are made safe', () => {
  const text = `${'x'.repeat(200)}HERE${'y'.repeat(200)}\n\t\tTAB\n\u001b[31mred`;
  const caret = (line: number, column: number): string => {
    const said = formatProblems([problem('fence-stray', 'error', at(line, column))], () => text);
    const [shown = '', below = ''] = said.split('\n').slice(3, 5);
    return shown.slice(below.indexOf('^'), below.indexOf('^') + 4);
  };
  expect(caret(1, 201)).toBe('HERE');
  expect(caret(2, 3)).toBe('TAB');
  expect(formatProblems([problem('fence-stray', 'error', at(3, 1))], () => text)).not.toContain(
    '\u001b',
  );
});

test('no problems, no words', () => {
  expect(formatProblems([], () => null)).toBe('');
  expect(countProblems([])).toBe('no problems');
});

test('every rule has two sentences', () => {
  // Whatever fact a rule asks for, it has.
  const facts: Facts = new Proxy({}, { get: () => 1 });
  expect(wordedRules.length).toBeGreaterThan(40);
  for (const rule of wordedRules) {
    const { message, mend } = wordProblem(problem(rule, 'error', at(1, 1), { actual: 'x', facts }));
    expect(message, rule).toMatch(/[.?]$/);
    expect(mend, rule).toMatch(/[.?]$/);
  }
});

test('no two rooms word the same rule', () => {
  const tables = [
    abcMessages,
    bowingMessages,
    buildingMessages,
    mapMessages,
    printMessages,
    readingMessages,
  ];
  const rules = tables.flatMap(table => Object.keys(table));
  expect([...rules].sort()).toEqual([...wordedRules].sort());
  expect(new Set(rules).size).toBe(rules.length);
});

test('every rule that the code can break has words', () => {
  const root = join(import.meta.dirname, '..', '..');
  const sources = ['src', 'shared'].flatMap(folder =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter(file => file.endsWith('.ts'))
      .map(file => readFileSync(join(root, folder, file), 'utf8')),
  );
  const rules = sources.flatMap(source =>
    [...source.matchAll(/\b(?:problem|inProse|fault|drop|say)\(\s*'([a-z-]+)'/g)].map(
      m => m[1] ?? '',
    ),
  );
  expect(rules.length).toBeGreaterThan(40);
  expect(rules.filter(rule => !wordedRules.includes(rule))).toEqual([]);
});

test('a rule without words is a defect of ours', () => {
  expect(() => wordProblem(problem('no-such-rule', 'error', null))).toThrow(/no-such-rule/);
  expect(() => wordProblem(problem('constructor', 'error', null))).toThrow(/constructor/);
});
