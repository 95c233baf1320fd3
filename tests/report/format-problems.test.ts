import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Problem, problem } from '../../shared/problem.ts';
import { ruleNames } from '../../shared/rules.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { excerpt } from '../../src/report/excerpt.ts';
import { countProblems, formatProblems } from '../../src/report/format-problems.ts';

const root = join(import.meta.dirname, '../..');

const at = (line: number, column: number) => ({ file: 'lessons/first.md', line, column });

test('a problem is placed, named, worded and shown, with the page that says more', () => {
  const found = problem('attribute-unknown', at(2, 14), {
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
      '    `satrt` is no word of `:::anchor`; it takes `id`, `of`, `bars` or `start`.',
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
      problem('html-dropped', at(9, 1)),
      problem(rule, { ...at(1, 1), file: 'tunes/slip.md' }),
      problem(rule, at(2, 5)),
      problem('import-words-left', null),
      problem(rule, at(2, 1)),
    ],
    () => null,
  );
  expect(said.match(/^(?:\S.*| {2}\S.*)$/gm)).toEqual([
    'The book as a whole',
    '  note, import-words-left',
    'lessons/first.md',
    '  Line 2, column 1: error, fence-stray',
    '  Line 2, column 5: error, fence-stray',
    '  Line 9, column 1: warning, html-dropped',
    'tunes/slip.md',
    '  Line 1, column 1: error, fence-stray',
    '3 errors, 1 warning, 1 note',
  ]);
});

test('a file is read once, however much is said of it', () => {
  const asked: string[] = [];
  const problems = [2, 3, 4].map(line => problem('fence-stray', at(line, 1)));
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
  // Whatever fact a rule asks for, it has; those that choose among sentences have one of the choices.
  const chosen: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    'drill-impossible': { why: 'no-fork' },
    'tune-past-limit': { what: 'notes' },
    'fence-unread': { why: 'space' },
    'print-picture': { why: 'kind' },
    'stroke-conflict': { mends: '' },
    'arrival-missed': { mend: '' },
  };
  expect(ruleNames.length).toBeGreaterThan(100);
  for (const rule of ruleNames) {
    const facts = new Proxy(chosen[rule] ?? {}, { get: (own, name) => own[String(name)] ?? '1' });
    const found = { ...problem('fence-stray', at(1, 1), { actual: 'x' }), rule, facts } as Problem;
    const { message, mend } = wordProblem(found);
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
  expect([...rules].sort()).toEqual([...ruleNames].sort());
  expect(new Set(rules).size).toBe(rules.length);
});

test('every rule of the catalogue can be broken', () => {
  const sources = ['src', 'shared'].flatMap(folder =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .map(file => join(folder, file))
      .filter(file => file.endsWith('.ts') && !/^shared\/(?:rules\.ts|words\/)/.test(file))
      .map(file => readFileSync(join(root, file), 'utf8')),
  );
  const text = sources.join('\n');
  // One pair is put together: `tune-unknown` and `anchor-unknown`.
  const unused = ruleNames.filter(rule => !text.includes(`'${rule}'`));
  expect(unused).toEqual(['tune-unknown', 'anchor-unknown']);
});
