import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestPlan } from '../../shared/bowing/best-plan.ts';
import { bowPath, wholeBow } from '../../shared/bowing/bow-path.ts';
import {
  add,
  compare,
  type Fraction,
  fraction,
  fractionText,
  subtract,
  zero,
} from '../../shared/music/fraction.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { settings, tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

/** The path of some notes, all from one stretch, with slurs by index of the note. */
function pathOf(body: string, bow: Fraction, slurs: readonly (readonly number[])[] = []) {
  const tune = tuneOf(body, 'M:none\nL:1/8');
  const performance = playedOrder(tune);
  const notes = performance.notes.map(n => n.event);
  return bowPath(performance, { notes, start: 'down', passes: [1] }, { slurs }, bow);
}

const places = (path: ReturnType<typeof bowPath>): string =>
  [path.start, ...path.strokes.map(s => s.to)].map(fractionText).join(' ');

describe('where on the bow notes fall (our own model, worked by hand)', () => {
  test('a long note down, a short one up, twice: it drifts, and half a whole note of bow holds it', () => {
    const path = pathOf('A2 B A2 B|', fraction(1, 2));
    expect(places(path)).toBe('1/16 5/16 3/16 7/16 5/16');
    expect(path.runsOut).toBeNull();
  });

  test('a bow of a crotchet runs out in the third stroke, begun at the frog', () => {
    const path = pathOf('A2 B A2 B|', fraction(1, 4));
    expect(places(path)).toBe('0 1/4 1/8 3/8 1/4');
    expect(path.runsOut).toBe(2);
  });

  test('where the ups are long it runs out at the frog, begun at the tip', () => {
    const path = pathOf('A B3 A|', fraction(1, 4));
    // It ranges from ⅛ above its start to ¼ below it.
    expect(places(path)).toBe('1/8 1/4 -1/8 0');
    expect(path.runsOut).toBe(1);
  });

  test('notes of a slur follow one another in one stroke; a tie is one note', () => {
    const path = pathOf('A B c-|c d|', fraction(1), [[0, 1, 2]]);
    const [first] = path.strokes;
    expect(path.strokes.map(s => s.direction)).toEqual(['down', 'up']);
    expect(first?.notes.map(n => fractionText(subtract(n.to, n.from)))).toEqual([
      '1/8',
      '1/8',
      '1/4',
    ]);
    expect(
      first?.notes.every((n, i, all) => i === 0 || compare(n.from, all[i - 1]?.to ?? zero) === 0),
    ).toBe(true);
  });

  test('a whole bow is the longest stroke of the level at the slow tempo', () => {
    const tune = { ...tuneOf('A4|'), type: 'waltz' as const };
    const improver = wholeBow(tune, settings, 'improver');
    // 88 crotchets a minute for 1.5 seconds are 2.2 crotchets.
    expect(fractionText(improver)).toBe('11/20');
  });
});

test('any notes: the drift is the plan’s own, and the bow lasts just when the range fits', () => {
  const lengths = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 14 });
  fc.assert(
    fc.property(lengths, fc.integer({ min: 1, max: 12 }), (times, size) => {
      const bow = fraction(size, 8);
      const path = pathOf(`${times.map(t => `A${t}`).join(' ')}|`, bow);
      const ends = [0];
      for (const [i, t] of times.entries()) ends.push((ends.at(-1) ?? 0) + (i % 2 === 0 ? t : -t));
      const lasts = Math.max(...ends) - Math.min(...ends) <= size;
      expect(path.runsOut === null).toBe(lasts);
      expect(compare(subtract(path.end, path.start), fraction(ends.at(-1) ?? 0, 8))).toBe(0);
      const before = path.strokes.slice(0, path.runsOut ?? path.strokes.length);
      for (const { to } of before) {
        expect(compare(to, zero) >= 0 && compare(to, bow) <= 0).toBe(true);
      }
      const out = path.runsOut === null ? undefined : path.strokes[path.runsOut];
      if (out) expect(compare(out.to, zero) < 0 || compare(out.to, bow) > 0).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test('the path of every plan ends as far from its start as the plan says it drifts', () => {
  const tune = tuneOf('|:(cd)ef gabc|dedc BAGF|E2GA BcdB|c4 B4:|', 'M:4/4\nL:1/8\nR:reel');
  const { bowing, performance } = studyOf(tune, { anchors: [anchorAt('A4', 'down', 'advanced')] });
  const leadIns = bowing.anchors.flatMap(a => a.leadIns);
  const plans = leadIns.flatMap(leadIn => leadIn.plans.map(plan => ({ leadIn, plan })));
  expect(plans.length).toBeGreaterThan(1);
  for (const { leadIn, plan } of plans) {
    const path = bowPath(performance, leadIn, plan, fraction(1, 2));
    expect(path.strokes).toHaveLength(plan.strokes);
    expect(compare(path.end, add(path.start, plan.drift))).toBe(0);
  }
  expect(bestPlan(leadIns)?.plan).toBe(leadIns[0]?.plans[0]);
});
