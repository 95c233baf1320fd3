import { describe, expect, test } from 'vitest';
import { type AlikeSpans, planAlike } from '../../shared/bowing/plan-alike.ts';
import { plainForm } from './forms.ts';

/** So many pairs of like phrases of two notes, one pair after another. */
const pairs = (count: number): AlikeSpans[] =>
  Array.from({ length: count }, (_, c) => [
    [4 * c, 4 * c + 2],
    [4 * c + 2, 4 * c + 4],
  ]);

describe('like phrases are kept alike as far as they are tried, and what is not tried is said', () => {
  test('nine pairs and the notes after them are ten stretches: all are kept alike', () => {
    // The last note alone, an odd stretch, turns the bow.
    const found = planAlike(plainForm(37), pairs(9), 3);
    expect(found).toMatchObject({ alike: 9, untied: 0, capped: false });
  });
  test('ten pairs and the notes after them are eleven: one is let go untried', () => {
    const found = planAlike(plainForm(41), pairs(10), 3);
    expect(found).toMatchObject({ untied: 1, capped: true });
    expect(found.ranked.length).toBeGreaterThan(0);
  });
  test('two like phrases alone turn the bow twice: they cannot stay alike, and that was tried', () => {
    const found = planAlike(plainForm(4), pairs(1), 3);
    expect(found).toMatchObject({ alike: 0, untied: 1, capped: false });
  });
});
