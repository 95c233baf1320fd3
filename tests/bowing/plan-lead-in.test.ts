import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type AlikeSpans, planAlike } from '../../shared/bowing/plan-alike.ts';
import { bestBowings, countBowings } from '../../shared/bowing/plan-lead-in.ts';
import { everyBowing } from './every-bowing.ts';
import { anyForm, plainForm } from './forms.ts';

test('counts and the ten best agree with the enumerator, lead-ins of up to 14 notes', () => {
  fc.assert(
    fc.property(anyForm(14), form => {
      const { ranked, ...counts } = everyBowing(form);
      expect(countBowings(form)).toEqual(counts);
      expect(bestBowings(form, 10)).toEqual(ranked.slice(0, 10));
    }),
    { numRuns: 150 },
  );
});

test('48 separate notes: 2^47 groupings, half of which arrive', () => {
  const counts = countBowings(plainForm(48));
  expect(String(counts.groupings)).toBe('140737488355328');
  expect(counts.arriving).toBe(2n ** 46n);
});

test('the best of 48 notes that miss is one slur into a beat, near to nothing changed', () => {
  const [best] = bestBowings(plainForm(48), 1);
  expect(best?.cost[0]).toBe(1);
  expect(best?.bowing.filter(x => !x)).toHaveLength(1);
});

test('more notes than a machine word: 1,024', () => {
  const counts = countBowings(plainForm(1024));
  expect(counts.groupings).toBe(2n ** 1023n);
  expect(bestBowings(plainForm(1024), 10)).toHaveLength(10);
});

test('identical phrases share one bowing: the ten best agree with the enumerator', () => {
  const laidOut = fc.tuple(anyForm(14), fc.integer({ min: 1, max: 4 }), fc.nat(3), fc.nat(3));
  fc.assert(
    fc.property(laidOut, ([form, length, before, between]) => {
      const spans: AlikeSpans = [
        [before, before + length],
        [before + length + between, before + 2 * length + between],
      ];
      fc.pre(before + 2 * length + between <= form.notes);
      const edges = spans.flatMap(([from, end]) => [from - 1, end - 1]);
      const whole = { ...form, written: form.written.map((x, j) => x || edges.includes(j)) };
      const alike = (bowing: readonly boolean[]): boolean =>
        edges.every(j => bowing[j] !== false) &&
        Array.from({ length: length - 1 }, (_, j) => j).every(
          j => bowing[before + j] === bowing[before + length + between + j],
        );
      const { ranked } = everyBowing(whole, alike);
      const found = planAlike(whole, [spans], 10);
      expect(found.untied).toBe(ranked.length > 0 ? 0 : 1);
      const wanted = ranked.length > 0 ? ranked : everyBowing(whole).ranked;
      expect(found.ranked).toEqual(wanted.slice(0, 10));
    }),
    { numRuns: 200 },
  );
});
