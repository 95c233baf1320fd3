import { expect, it } from 'vitest';
import { nearestBar } from '../../shared/music/nearest-bar.ts';

const bars = ['A0', 'A1', 'A2', 'A3', 'A8/1', 'A8/2', 'B1', 'B2'];

it.each([
  ['A9', 'A8/1'],
  ['A4', 'A3'],
  ['B7', 'B2'],
  ['A7/2', 'A8/1'],
  ['C1', 'A1'],
  ['turn', null],
])('a bar that the tune has not, %s, is nearest to %s', (found, expected) => {
  expect(nearestBar(found, bars)).toBe(expected);
});

it('a note is looked for in its own bar', () => {
  expect(nearestBar('B2:12', ['B2:1', 'B2:2', 'B2:6'])).toBe('B2:6');
});
