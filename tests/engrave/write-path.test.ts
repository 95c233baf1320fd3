import { expect, test } from 'vitest';
import {
  barPath,
  readBar,
  readOutline,
  short,
  shortPath,
  shortSteps,
} from '../../src/engrave/write-path.ts';

test('numbers are rounded to twentieths and written short', () => {
  expect([0, 0.02, -0.02, 0.5, -0.5, 10, 12.98, -3.25].map(short)).toEqual([
    '0',
    '0',
    '0',
    '.5',
    '-.5',
    '10',
    '13',
    '-3.25',
  ]);
});

test('steps add up to the rounded points', () => {
  const zigzag = `M 0 0 ${Array.from({ length: 50 }, (_, i) => `L ${(i + 1) * 1.04} ${i * 0.97}`).join(' ')}`;
  let [x, y] = [0, 0];
  for (const [, command, rest] of shortPath(zigzag).matchAll(/([Mlhv])([^Mlhv]*)/g)) {
    const n = (rest?.match(/-?(?:\d*\.)?\d+/g) ?? []).map(Number);
    if (command === 'h') x += n[0] ?? 0;
    else if (command === 'v') y += n[0] ?? 0;
    else [x, y] = [x + (n[0] ?? 0), y + (n[1] ?? 0)];
  }
  expect([x, y].map(v => Math.round(v * 20) / 20)).toEqual([52, 47.55]);
});

test('straight steps are h and v, and the shape is moved', () => {
  expect(shortPath('M 1 2 L 1 12 L 2.5 12 L 2.5 2 z', 10, 0.5)).toBe('M11 2.5v10h1.5v-10');
});

test('an outline is told from a shape', () => {
  expect(readOutline('M 3.5 -2c 1 2 3 4 5 6z')).toEqual({ x: 3.5, y: -2, steps: 'c 1 2 3 4 5 6z' });
  expect(readOutline('M 0 0 L 5 5 z')).toBeNull();
});

test('steps of a glyph are rounded to tenths without adding up errors', () => {
  expect(shortSteps('c 0.10 -0.30 1.5 0.25 2 3z')).toBe('c.1-.3 1.5.3 2 3z');
  expect(shortSteps('l 0.04 0l 0.04 0l 0.04 0l 0.04 0')).toBe('h.1.1');
  // The guides of a curve stand off its line by less than a hundredth of a space: it is a line.
  expect(shortSteps('c 1 0.05 2 0.05 3 0l 3 0')).toBe('h3 3');
  expect(shortSteps('c 1 0.5 2 0.5 3 0')).toBe('c1 .5 2 .5 3 0');
});

test('four corners are a bar with a thickness, if they are square', () => {
  const bar = readBar('M 10 20L 10 50L 10.6 50L 10.6 20z');
  expect(bar).toEqual({ from: [10.3, 20], to: [10.3, 50], thickness: 0.6 });
  expect(bar && barPath(bar, 1)).toBe('M10.3 21v30');
  expect(readBar('M10 20 L40 30L40 34 L10 24z')).toBeNull();
});
