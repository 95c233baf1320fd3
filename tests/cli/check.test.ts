import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-check-'));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function check(...args: string[]): Ran {
  const ran = spawnSync(process.execPath, [join(root, 'dist/cli.js'), 'check', ...args], {
    cwd: work,
    encoding: 'utf8',
  });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

/** A book with one error and one warning in two files. */
const files = {
  'book/bowbook.yaml': 'title: Tuesday Fiddles at the Ice House\nrights: own\n',
  'book/lessons/2026-09-15-first.md': 'Start on a :stroke[upp].\n',
  'book/tunes/kelp.md': '```abc\nX:1\nT:Kelp Cutters\nM:4/4\nL:1/8\nK:G\nGABc (dBGB|A4 G4|\n```\n',
  'warned/bowbook.yaml': 'title: Tuesday Fiddles at the Ice House\nrights: own\n',
  'warned/lessons/2026-09-15-first.md': 'Learned from Edda[^1].\n',
  'sound/bowbook.yaml': 'title: Tuesday Fiddles at the Ice House\nrights: own\n',
};

beforeAll(() => {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(work, path, '..'), { recursive: true });
    writeFileSync(join(work, path), text);
  }
});

afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('bowbook check', () => {
  it('tells a person what is wrong, by file, with a count at the end', () => {
    const { code, out, err } = check('book');
    expect([code, err]).toEqual([1, '']);
    expect(out).toBe(
      [
        'lessons/2026-09-15-first.md',
        '',
        '  Line 1, column 12: error, stroke-unknown',
        '    `upp` is no stroke; a stroke is `up` or `down`.',
        '    Did you mean `up`?',
        '       1 | Start on a :stroke[upp].',
        '         |            ^',
        '    More: docs/rules/stroke-unknown.md',
        '',
        'tunes/kelp.md',
        '',
        '  Line 7, column 6: warning, slur-open',
        '    The slur that opens at note 5 of A1 is never closed.',
        '    Write `)` after the last note of the slur.',
        '       7 | GABc (dBGB|A4 G4|',
        '         |      ^',
        '    More: docs/rules/slur-open.md',
        '',
        '1 error, 1 warning',
        '',
      ].join('\n'),
    );
  });

  it('tells other programs, in the shape of the published schema', () => {
    const { code, out } = check('book', '--json');
    expect(code).toBe(1);
    const told = JSON.parse(out);
    const { $defs } = JSON.parse(readFileSync(join(root, 'docs/study.schema.json'), 'utf8'));
    const shape = { type: 'array', items: { $ref: '#/$defs/problem' }, $defs };
    const validate = new Ajv({ allowUnionTypes: true, strict: false }).compile(shape);
    expect(validate(told), JSON.stringify(validate.errors)).toBe(true);
    expect(told[0]).toEqual({
      rule: 'stroke-unknown',
      severity: 'error',
      file: 'lessons/2026-09-15-first.md',
      line: 1,
      column: 12,
      message: '`upp` is no stroke; a stroke is `up` or `down`.',
      mend: 'Did you mean `up`?',
      actual: 'upp',
      expected: 'up, down',
      nearest: 'up',
    });
    expect(told).toHaveLength(2);
    expect(check('sound', '--json')).toEqual({ code: 0, out: '[]\n', err: '' });
  });

  it('gives editors a line a problem, with files named from where it runs', () => {
    const { code, out } = check('book', '--lines');
    expect(code).toBe(1);
    expect(out).toBe(
      'book/lessons/2026-09-15-first.md:1:12: error: `upp` is no stroke; a stroke is `up` or `down`. Did you mean `up`? [stroke-unknown]\n' +
        'book/tunes/kelp.md:7:6: warning: The slur that opens at note 5 of A1 is never closed. Write `)` after the last note of the slur. [slur-open]\n',
    );
    expect(check('sound', '--lines')).toEqual({ code: 0, out: '', err: '' });
    expect(check('book', '--lines', '--json').code).toBe(2);
  });

  it('prints the page about a rule', () => {
    const page = readFileSync(join(root, 'docs/rules/arrival-missed.md'), 'utf8');
    expect(check('--about', 'arrival-missed')).toEqual({ code: 0, out: page, err: '' });
    const near = check('--about', 'arival-missed');
    expect([near.code, near.out]).toEqual([2, '']);
    expect(near.err).toBe('There is no rule "arival-missed". Did you mean "arrival-missed"?\n');
  });

  it('lets warnings pass, and with --strict fail', () => {
    expect(check('warned').code).toBe(0);
    expect(check('warned').out).toMatch(/\n1 warning\n$/);
    expect(check('warned', '--strict').code).toBe(1);
    expect(check('warned', '--strict', '--json').code).toBe(1);
    expect(check('sound', '--strict')).toEqual({ code: 0, out: 'no problems\n', err: '' });
  });
});
