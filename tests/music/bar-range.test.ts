import { describe, expect, it } from 'vitest';
import { barRangeText, parseBarRange } from '../../shared/music/bar-range.ts';

describe('a passage in writing', () => {
  it.each([
    ['B7', 'B7'],
    ['B7-B8', 'B7-B8'],
    [' B7 – B8 ', 'B7-B8'],
    ['B7:3-B8:5', 'B7:3-B8:5'],
    ['A0', 'A0'],
    ['B8/2', 'B8/2'],
    ['B8/1,3:2-C1', 'B8/1,3:2-C1'],
    ["A'12", "A'12"],
    ['Vii3', 'Vii3'],
    ['B7:3-B7:3', 'B7:3'],
    ['B7-B7:3', 'B7-B7:3'],
  ])('%s', (text, told) => {
    const range = parseBarRange(text);
    expect(range && barRangeText(range)).toBe(told);
  });
  it('counts notes from 1, and a bar without one is the whole bar', () => {
    expect(parseBarRange('B7:12')).toEqual({
      from: { bar: 'B7', note: 12 },
      to: { bar: 'B7', note: 12 },
    });
    expect(parseBarRange('A1-A2')?.to).toEqual({ bar: 'A2', note: null });
  });
  it.each([
    '',
    'B',
    '7',
    'B7:0',
    'B7-',
    '-B7',
    'B7-B8-B9',
    'B7:',
    'B7:x',
    'xB7 y',
    "'A1",
    'B8/',
    'B8/x',
    '1B7',
  ])('not %j', text => expect(parseBarRange(text)).toBeNull());
});
