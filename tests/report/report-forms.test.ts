import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { problem } from '../../shared/problem.ts';
import { problemJson } from '../../src/report/problem-json.ts';
import { problemLines } from '../../src/report/problem-lines.ts';

const root = join(import.meta.dirname, '../..');

const misspelt = problem(
  'attribute-unknown',
  { file: 'lessons/first.md', line: 7, column: 14 },
  {
    facts: { block: ':::anchor', name: 'satrt' },
    actual: 'satrt',
    expected: ['id', 'of', 'bars', 'start'],
    nearest: 'start',
  },
);
const stray = problem('file-unread', null, { actual: 'odd\nname.md' });

/**
 * GNU Coding Standards, "Formatting Error Messages": `sourcefile:lineno:column: message` for a
 * place, `program: message` for none; lines and columns count from 1. Compilers put the severity
 * before the message (common practice).
 */
test('a line a problem, as compilers write them, in the order of their places', () => {
  const lines = problemLines([misspelt, stray], file => `content/${file}`).split('\n');
  expect(lines).toHaveLength(3);
  expect(lines[0]).toMatch(/^bowbook: warning: `odd name\.md` is not read: .+ \[file-unread\]$/);
  expect(lines[1]).toBe(
    'content/lessons/first.md:7:14: error: `satrt` is no word of `:::anchor`; it takes `id`, `of`, `bars` or `start`. Did you mean `start`? [attribute-unknown]',
  );
  expect(lines[2]).toBe('');
});

test('the lines are read back by a pattern that knows only the standard', () => {
  const gnu =
    /^(?<file>[^:]+):(?<line>\d+):(?<column>\d+): (?<severity>error|warning|note): (?<message>.+)$/;
  const read = gnu.exec(problemLines([misspelt], file => file).trimEnd())?.groups;
  expect(read).toMatchObject({
    file: 'lessons/first.md',
    line: '7',
    column: '14',
    severity: 'error',
    message: expect.stringMatching(/^`satrt` is no word/),
  });
});

test('as data a problem has the shape of the published schema', () => {
  const { $defs } = JSON.parse(readFileSync(join(root, 'docs/study.schema.json'), 'utf8'));
  const validate = new Ajv({ allowUnionTypes: true, strict: false }).compile({
    $ref: '#/$defs/problem',
    $defs,
  });
  for (const p of [misspelt, stray]) {
    const data = JSON.parse(JSON.stringify(problemJson(p)));
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
  }
  expect(problemJson(misspelt)).toEqual({
    rule: 'attribute-unknown',
    severity: 'error',
    file: 'lessons/first.md',
    line: 7,
    column: 14,
    message: '`satrt` is no word of `:::anchor`; it takes `id`, `of`, `bars` or `start`.',
    mend: 'Did you mean `start`?',
    actual: 'satrt',
    expected: 'id, of, bars, start',
    nearest: 'start',
  });
  expect(problemJson(stray)).toMatchObject({ file: null, line: null, column: null });
});
