import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fractionText } from '../../shared/music/fraction.ts';
import { readPartOrder } from '../../shared/music/part-order.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { playedBars, readTune, sounded } from '../abc/read-abc.ts';

const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n';
const body = '\nP:A\nD8|\nP:B\nE8|\nP:C\nF8|]';
const performance = (abc: string) => playedOrder(readTune(head + abc).tune);

describe('the order of parts in the header (ABC 2.1, section 3.1.9)', () => {
  it.each([
    ['AABA', 'A1 A1 B1 A1'],
    ['A2B2', 'A1 A1 B1 B1'],
    ['(AB)2C', 'A1 B1 A1 B1 C1'],
    ['A.B.(A.C)2', 'A1 B1 A1 C1 A1 C1'],
  ])('P:%s', (order, expected) =>
    expect(playedBars(`X:1\nT:T\nM:4/4\nL:1/8\nP:${order}\nK:D${body}`)).toBe(expected),
  );
  it('plays the repeats inside a part each time', () =>
    expect(playedBars(`X:1\nT:T\nM:4/4\nL:1/8\nP:AB\nK:D\nP:A\n|:D8:|\nP:B\nE8|]`)).toBe(
      'A1 A1 B1',
    ));
  it('takes words for a name', () => {
    expect(readPartOrder('Modern Version.', ['A', 'V'])).toEqual({ order: [], unknown: [] });
    expect(readPartOrder('aab', ['a', 'b'])).toEqual({ order: [0, 0, 1], unknown: [] });
    expect(readPartOrder('Variation', ['A', 'Variation']).order).toEqual([1]);
  });
  it('says which parts there are not', () =>
    expect(readPartOrder('AXB', ['A', 'B'])).toEqual({ order: [0, 1], unknown: ['X'] }));
  it('never hangs, whatever is written', () =>
    fc.assert(fc.property(fc.string(), text => readPartOrder(text, ['A']).order.length <= 1000)));
});

describe('passes', () => {
  it('count for bars and for notes', () => {
    const { bars, notes } = performance('FE|:D8|[1D6FE:|[2D6|]');
    expect(bars.map(b => b.pass)).toEqual([1, 1, 1, 2, 1]);
    expect(notes.filter(n => n.barPlayed === 3).map(n => n.pass)).toEqual([2]);
  });
  it('play a pickup outside the repeat once', () =>
    expect(playedBars(`${head}FE|:D8|E6FE:|`)).toBe('A0 A1 A2 A1 A2'));
  it('play a pickup after a last ending that no sign parts from it once', () =>
    expect(playedBars(`${head}FE|:D8|[1E6FE:|[2F6|FE|:G8|A6FE:|`)).toBe(
      'A0 A1 A2/1 A1 A2/2 B0 B1 B2 B1 B2',
    ));
});

describe('ties', () => {
  const lengths = (abc: string) =>
    performance(abc)
      .notes.map(n => fractionText(n.duration))
      .join(' ');
  it.each([
    ['over a bar line', 'D4E4-|E4F4|]', '1/2 1 1/2'],
    ['over several notes', 'D8-|D8-|D8|]', '3'],
    ['from the end of a repeat to its start', '|:D4E2D2-:|F8|]', '1/2 1/4 3/4 1/4 1/4 1'],
    ['into both endings', '|:D8-|[1D8:|[2D8|]', '2 2'],
    ['only where the pitches agree', '|:D8-|[1D8:|[2E8|]', '2 1 1'],
    ['of chords', '[DF]8-|[DF]8|]', '2'],
    ['not through a rest', 'D4-z4|D8|]', '1/2 1'],
  ])('%s', (_, abc, expected) => expect(lengths(abc)).toBe(expected));
  it('name the written notes tied on', () =>
    expect(performance('D4E4-|E4F4|]').notes.map(n => [n.event, n.tied])).toEqual([
      [0, []],
      [1, [2]],
      [3, []],
    ]));
});

describe('gaps', () => {
  it('stand after a rest, and after a breath, which is drawn after its own note', () => {
    const { notes } = performance('D2 z2 E2 !breath!F2|G8|]');
    expect(notes.map(n => n.afterGap)).toEqual([false, true, false, true]);
  });
});

it('times run on from the start of the tune', () => {
  const { notes, bars, length } = performance('FE|:D4E4:|');
  expect(notes.map(n => fractionText(n.onset)).join(' ')).toBe('0 1/8 1/4 3/4 5/4 7/4');
  expect(bars.map(b => [b.first, b.end])).toEqual([
    [0, 2],
    [2, 4],
    [4, 6],
  ]);
  expect(fractionText(length)).toBe('9/4');
});

it('writing a repeat out leaves what is sounded as it was', () => {
  const note = fc.constantFrom('D8', 'E4F4', 'D2E2F2G2', 'z4A4', '(3ABcd2 e4');
  const bars = fc.array(note, { minLength: 1, maxLength: 5 }).map(b => b.join('|'));
  fc.assert(
    fc.property(bars, bars, bars, (a, one, two) => {
      const folded = `${head}|:${a}|[1${one}:|[2${two}|]`;
      const unfolded = `${head}${a}|${one}|${a}|${two}|]`;
      expect(sounded(folded)).toEqual(sounded(unfolded));
    }),
    { numRuns: 50 },
  );
});
