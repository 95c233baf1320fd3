/** What is wrong with a tune is said, at its place, and what can be built still is. */
import { describe, expect, it } from 'vitest';
import { abcMessages } from '../../shared/words/en/abc.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { readTune, rules } from './read-abc.ts';

const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n';
const found = (body: string) =>
  readTune(head + body).problems.map(p => [p.rule, p.place?.line, p.place?.column]);

describe('places', () => {
  it('are those of the file in which the fence stands', () => {
    const { tunes } = parseTunes({
      text: 'T:One\nL:1/8\nM:2/4\nK:D\nABcd|\nefga|]\n',
      file: 'lessons/a.md',
      line: 12,
      indent: 3,
    });
    const [tune] = tunes;
    expect(tune?.bars.map(b => b.place)).toEqual([
      { file: 'lessons/a.md', line: 16, column: 4 },
      { file: 'lessons/a.md', line: 17, column: 4 },
    ]);
    expect(tune?.events[2]?.place).toEqual({ file: 'lessons/a.md', line: 16, column: 6 });
  });
  it('hold for every tune of a source, and after Windows line ends', () => {
    const text =
      'M:2/4\nL:1/8\n\nX:1\r\nT:One\r\nK:D\r\nABcd|]\r\n\r\nX:2\r\nT:Two\r\nK:G\r\n vGABc|]\r\n';
    const { tunes, problems } = parseTunes({ text, file: 'a.abc', line: 1, indent: 0 });
    expect(problems).toEqual([]);
    expect(tunes.map(t => [t.id, t.title, t.meter.beats])).toEqual([
      ['one', 'One', 2],
      ['two', 'Two', 2],
    ]);
    expect(tunes.map(t => t.events[0]?.place.line)).toEqual([7, 12]);
    const first = tunes[1]?.events[0];
    expect(first?.place.column).toBe(2);
    expect(tunes[1]?.source.text.slice(first?.start, first?.stop)).toBe('vG');
  });
  it('give the offsets of a note with its signs', () => {
    const { tune } = readTune(`${head}"G"u(~B2 A2) {c}!3!^d/2>e c3|`);
    const text = (i: number) => tune.source.text.slice(tune.events[i]?.start, tune.events[i]?.stop);
    expect([0, 1, 2].map(text)).toEqual(['"G"u(~B2', 'A2)', '{c}!3!^d/2>']);
  });
});

describe('slurs', () => {
  it.each([
    ['(DE FG ABcd|', [['slur-open', 6, 1]]],
    ['DE FG) ABcd|', [['slur-not-opened', 6, 5]]],
    ['|:DEFG ABc(d:|d)EFG ABcd|', [['slur-over-repeat', 6, 11]]],
    ['(DE z)F ABcd|', [['slur-over-rest', 6, 5]]],
    ['DE (FuG) ABcd|', [['mark-inside-slur', 6, 6]]],
    ['DE uG-uG ABcd|', [['mark-on-tied-note', 6, 7]]],
    ['DE G-A ABcd|', [['tie-to-nothing', 6, 4]]],
    ['D-|:D8:|', []],
    ['|:D6 D2-|[1D8:|[2E8|]', []],
    ['(DE|FG ABcde)f|', []],
    ['DE (zF G)Bcd|', [['slur-on-rest', 6, 4]]],
  ])('%s', (body, expected) =>
    expect(found(body).filter(([rule]) => rule !== 'bar-length')).toEqual(expected),
  );
});

describe('bars that do not add up', () => {
  const named = (body: string) =>
    readTune(head + body).problems.map(({ rule, facts, actual }) => [
      rule,
      'bar' in facts && facts.bar,
      'by' in facts && facts.by,
      actual,
    ]);
  it('are named', () => {
    expect(named('DEFG ABcd|DEFG ABc|DEFG ABcde|D8|]')).toEqual([
      ['bar-length', 'A2', 'short', '7/8'],
      ['bar-length', 'A3', 'long', '9/8'],
    ]);
  });
  it.each([
    ['a pickup completed at the end', 'FE|D8|D8|D6|]'],
    ['a pickup completed at the repeat', 'FE|:D8|D6 FE:|'],
    ['pickups at both parts', 'FE|D8|D8|D8|D6:|:FE|D8|D8|D8|D6:|'],
    ['a bar cut by a repeat sign', '|:D8|D8|D8|D6:|FE|D8|D8|D8|D6:|'],
    ['endings that complete the pickup', 'FE|:D8|[1D6FE:|[2D6|]'],
    ['an ending in the middle of a bar', '|:D8|D4[1D4:|[2E4|]'],
    ['a double bar in the middle of a bar', 'D8|D8|D8|D8|D6||FE|D8|D8|D8|D6|]'],
  ])('excuse %s', (_, body) => expect(named(body)).toEqual([]));
  it('are not looked for in free time', () =>
    expect(rules('X:1\nT:T\nM:none\nL:1/8\nK:D\nDEF|G|]')).toEqual([]));
});

describe('other defects', () => {
  it.each([
    ['endings-mismatch', '|:D8|[1E8:|[3F8|]'],
    ['abc-warning', 'DEFG !wobble!ABcd|'],
    ['several-voices', 'V:1\nDEFG ABcd|\nV:2\nD8|'],
    ['abc-blank-line', 'D8|\n\nE8|'],
  ])('%s', (rule, body) => expect(rules(head + body)).toEqual([rule]));
  it('names a part that the order has and the tune has not', () => {
    const { tune, problems } = readTune('X:1\nT:T\nM:4/4\nL:1/8\nP:ABX\nK:D\nP:A\nD8|\nP:B\nE8|\n');
    expect(problems.map(p => [p.rule, p.actual])).toEqual([['part-unknown', 'X']]);
    expect(tune.order).toEqual([0, 1]);
  });
  it('places a warning of abcjs in the file, without its HTML', () => {
    const { problems } = parseTunes({
      text: `${head}DEFG !wobble!ABcd|`,
      file: 'a.md',
      line: 21,
      indent: 2,
    });
    expect(problems[0]).toMatchObject({ place: { line: 26, column: 8 } });
    expect(problems[0]?.actual).toContain('wobble');
    expect(problems[0]?.actual).not.toMatch(/[<>]/);
  });
  it('places a line at which abcjs gives up, and reads the tunes around it', () => {
    const text = 'X:1\nT:A\nK:D\nD|\nX:2\nT:B\nK:D\nD8|\n[!e|\nF8|\nX:3\nT:C\nK:D\nD|\n';
    const { tunes, problems } = parseTunes({ text, file: 'a.abc', line: 1, indent: 0 });
    expect(tunes.map(t => t.title)).toEqual(['A', 'C']);
    expect(problems.map(p => [p.rule, p.place?.line])).toEqual([['abc-unreadable', 9]]);
  });
  it('reads on: a tune with several defects is still built', () =>
    expect(readTune(`${head}(DE !wobble!FG A|D8|]`).tune.bars).toHaveLength(2));
  it('makes no tune of prose, and says so', () => {
    const { tunes, problems } = parseTunes({
      text: 'T:Only a title\nK:D\n',
      file: 'a',
      line: 1,
      indent: 0,
    });
    expect([tunes.length, problems.map(p => p.rule)]).toEqual([0, ['no-notes']]);
  });
  it('bounds a tune that would play for ever', () => {
    const { problems } = readTune(`X:1\nT:T\nP:((A99)99)99\nK:D\nP:A\n${'DEFG '.repeat(10)}|`);
    expect(problems.map(p => p.rule)).toContain('too-long-to-play');
  });
});

it('every rule has its wording', () => {
  const used = [
    'abc-unreadable',
    'abc-warning',
    'abc-blank-line',
    'no-notes',
    'several-voices',
    'part-unknown',
    'too-long-to-play',
    'bar-length',
    'endings-mismatch',
    'slur-open',
    'slur-not-opened',
    'slur-over-repeat',
    'slur-over-rest',
    'slur-on-rest',
    'mark-inside-slur',
    'mark-on-tied-note',
    'tie-to-nothing',
    'accidental-elsewhere',
  ];
  expect(Object.keys(abcMessages).sort()).toEqual(used.sort());
  const { problems } = readTune(`${head}D8|DEFG ABc|(D8|]`);
  expect(problems.map(p => wordProblem(p).message)).toEqual([
    'Bar A2 is too short: it adds up to 7/8 of a whole note, and a bar of 4/4 has 1.',
    'The slur that opens at note 1 of A3 is never closed.',
  ]);
});
