import fc from 'fast-check';
import { expect, it } from 'vitest';
import { imposePages, type Side } from '../../src/print/impose-pages.ts';

/**
 * Folds a booklet as hands do, by another road than the code's: each sheet is cut across, and its
 * halves are laid one in another, outermost first. Reading goes in through the right-hand leaves,
 * front then back, and out again through the left-hand ones, back then front.
 */
function fold(sides: readonly Side[]): readonly (number | null)[] {
  const halves: { front: (number | null)[]; back: (number | null)[] }[] = [];
  for (let i = 0; i < sides.length; i += 2) {
    const [front, back] = [sides[i] as Side, sides[i + 1] as Side];
    halves.push({ front: [front[0], front[1]], back: [back[0], back[1]] });
    halves.push({ front: [front[2], front[3]], back: [back[2], back[3]] });
  }
  // Turned over the long edge, what is printed left on the back lies behind the right of the front.
  const inward = halves.flatMap(({ front, back }) => [front[1] ?? null, back[0] ?? null]);
  const outward = halves
    .toReversed()
    .flatMap(({ front, back }) => [back[1] ?? null, front[0] ?? null]);
  return [...inward, ...outward];
}

it('folds into a booklet that reads from first to last', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 90 }), count => {
      const read = fold(imposePages(count));
      expect(read.length % 8).toBe(0);
      expect(read.length - count).toBeLessThan(8);
      expect(read.slice(0, count)).toEqual(Array.from({ length: count }, (_, i) => i));
      expect(read.slice(count).every(p => p === null)).toBe(true);
    }),
  );
});

it('has the sides of the worked example', () => {
  expect(imposePages(8)).toEqual([
    [7, 0, 5, 2],
    [1, 6, 3, 4],
  ]);
});
