import { describe, expect, it } from 'vitest';
import { readTune } from '../abc/read-abc.ts';

const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n';
const named = (body: string, fields = head) =>
  readTune(fields + body)
    .tune.bars.map(b => b.name)
    .join(' ');
const parts = (body: string, fields = head) => {
  const { tune } = readTune(fields + body);
  return tune.parts.map(p => `${p.name}: ${p.bars.map(b => tune.bars[b]?.name).join(' ')}`);
};
const four = 'D8|E8|F8|G8';

describe('parts begin (issue: parts from repeat signs, double bars and P:)', () => {
  it.each([
    ['at |:', `${four}|:${four}:|`, 'A1 A2 A3 A4 B1 B2 B3 B4'],
    ['after :|', `|:${four}:|${four}|]`, 'A1 A2 A3 A4 B1 B2 B3 B4'],
    ['at ::', `|:D8::E8:|`, 'A1 B1'],
    ['at :|: and :||:', `|:D8:|:E8:||:F8:|`, 'A1 B1 C1'],
    ['after :| with |: on the next line', `|:D8:|\n|:E8:|`, 'A1 B1'],
    ['after a double bar', `${four}||${four}|]`, 'A1 A2 A3 A4 B1 B2 B3 B4'],
    ['but not after a double bar near the start', `D8|E8||F8|G8|]`, 'A1 A2 A3 A4'],
    ['nor after one inside an open repeat', `|:${four}||${four}:|`, 'A1 A2 A3 A4 A5 A6 A7 A8'],
  ])('%s', (_, body, expected) => expect(named(body)).toBe(expected));
});

describe('pickups are counted to the part they lead into', () => {
  it.each([
    ['at the start', `FE|${four}|]`, 'A0 A1 A2 A3 A4'],
    ['before |:', `FE|:${four}:|`, 'A0 A1 A2 A3 A4'],
    [
      'after a repeat that the bar before completes',
      `FE|:D8|E8|F8|G6:|:FE|D8|E8:|`,
      'A0 A1 A2 A3 A4 B0 B1 B2',
    ],
    [
      'after a double bar',
      `FE|D8|E8|F8|G8|G6||FE|D8|E8|F8|G6|]`,
      'A0 A1 A2 A3 A4 A5 B0 B1 B2 B3 B4',
    ],
    ['standing before the sign of the next part', `${four}|FE|:D8|E8:|`, 'A1 A2 A3 A4 B0 B1 B2'],
    [
      'but not where the bar completes its own pickup',
      `FE|D8|E8|F8|G6|:D8|E8:|`,
      'A0 A1 A2 A3 A4 B1 B2',
    ],
    ['but not at the very end', `FE|:D8|E8|F8|G6FE:|G6|]`, 'A0 A1 A2 A3 A4 A5'],
  ])('%s', (_, body, expected) => expect(named(body)).toBe(expected));
});

describe('bars of endings carry the numbers of the ending and of the bar they stand for', () => {
  it.each([
    ['one bar each', '|:D8|E8|[1F8:|[2G8|]', 'A1 A2 A3/1 A3/2'],
    ['two bars each', '|:D8|[1E8|F8:|[2G8|A8|]', 'A1 A2/1 A3/1 A2/2 A3/2'],
    ['and a pickup after them', '|:D8|[1E8:|[2F6||FE|:G8|A6:|', 'A1 A2/1 A2/2 B0 B1 B2'],
    [
      'and a short bar before the sign',
      'FE|:D8|[1E6FE:|[2F6|:FE|G8|A6:|',
      'A0 A1 A2/1 A2/2 B0 B1 B2',
    ],
    [
      'and a pickup that no sign parts from the last',
      'FE|:D8|[1E6FE:|[2F6|FE|:G8|A6:|',
      'A0 A1 A2/1 A2/2 B0 B1 B2',
    ],
    [
      'but a last ending of two bars, the second short, keeps both',
      '|:D8|[1E8|F8:|[2E8|F6|:G8|A8:|',
      'A1 A2/1 A3/1 A2/2 A3/2 B1 B2',
    ],
    ['several times', '|:D8|[1,3E8:|[2F8|]', 'A1 A2/1,3 A2/2'],
    ['then the next part', '|:D8|[1E8:|[2F8|||:G8:|', 'A1 A2/1 A2/2 B1'],
    ['a last ending that nothing closes', '|:D8|[1E8:|[2F8|\nG8|A8:|', 'A1 A2/1 A2/2 B1 B2'],
  ])('%s', (_, body, expected) => expect(named(body)).toBe(expected));
});

describe('P: names parts', () => {
  it('by its letters', () =>
    expect(parts(`P:A\nD8|E8|\nP:T\nF8|]`)).toEqual(['A: A1 A2', 'T: T1']));
  it('and a name used twice is one part', () =>
    expect(parts(`P:A\nD8|\nP:B\nE8|\nP:A\nF8|]`)).toEqual(['A: A1 A2', 'B: B1']));
  it('counts a pickup before the first to it', () =>
    expect(parts(`FE|\nP:A\nD8|E8|]`)).toEqual(['A: A0 A1 A2']));
  it('writes figures as letters, so that bars can be told', () =>
    expect(parts(`P:Verse 2\nD8|E8|]`)).toEqual(['Verseii: Verseii1 Verseii2']));
});

it('numbers the notes of a bar from 1, rests left out', () => {
  const ids = readTune(`${head}FE|D2 z2 [DF]4|`).tune.events.flatMap(e =>
    e.kind === 'note' ? e.id : [],
  );
  expect(ids).toEqual(['A0:1', 'A0:2', 'A1:1', 'A1:2']);
});

it('counts the bars of a rest of several', () => expect(named('D8|Z2|E8|]')).toBe('A1 A2 A3 A4'));
