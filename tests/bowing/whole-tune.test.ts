import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../shared/bowing/apply-edit.ts';
import { type BowingInput, bowingInput } from '../../shared/bowing/bowing-input.ts';
import type { SetPassage } from '../../shared/bowing/find-lead-ins.ts';
import { layScore } from '../../shared/bowing/lay-strokes.ts';
import { strokesOf } from '../../shared/bowing/lead-in-model.ts';
import {
  type BowingContext,
  bowingContext,
  leadInModel,
  presetOf,
} from '../../shared/bowing/lead-in-of.ts';
import { solveParities } from '../../shared/bowing/parity-equations.ts';
import { bowingCost, strokeTerms } from '../../shared/bowing/stroke-terms.ts';
import { troublesOf } from '../../shared/bowing/troubles.ts';
import { tuneCells } from '../../shared/bowing/tune-cells.ts';
import { planWholeTune } from '../../shared/bowing/whole-tune.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { resolvePassage } from '../../shared/music/resolve-passage.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { settings, tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

function passageOf(tune: Tune, bars: string, direction: Direction): SetPassage {
  const found = resolvePassage(tune, anchorAt(bars, direction).bars);
  if ('unknown' in found) throw new Error(found.unknown);
  return { id: bars, ...found, direction };
}

function setUp(tune: Tune, passages: readonly SetPassage[]) {
  const performance = playedOrder(tune);
  const anchored = new Map(passages.map(p => [p.first, p.direction]));
  const score = bowingInput(tune, performance, { anchored });
  const fingering = tune.events.map(() => []);
  const context = bowingContext(tune, performance, fingering, mapSections(tune), settings);
  return { context, score, laid: layScore(score) };
}

const plan = (tune: Tune, passages: readonly SetPassage[]) => {
  const { context, score, laid } = setUp(tune, passages);
  return planWholeTune(context, score, laid, passages);
};

/** Every bowing of the free cells, laid and judged one by one: the least cost, or null for none. */
function cheapestByTrying(
  context: BowingContext,
  score: BowingInput,
  passages: readonly SetPassage[],
): readonly number[] | null {
  const cut = tuneCells(score, layScore(score), passages);
  const cells = (cut?.cells ?? []).flatMap((cell, c) => {
    if (cell.unknown === null) return [];
    const span = cut?.played.find(p => p.cell === c);
    const aim = {
      start: 'down',
      arrive: 'down',
      level: settings.level,
      preset: presetOf(settings, context.tune, null),
    } as const;
    return [leadInModel(context, span?.from ?? 0, span?.end ?? 0, score.joined, aim)].map(form => ({
      cell,
      form,
    }));
  });
  const junctions = cells.flatMap(({ cell }) => cell.events.slice(1));
  const free = new Set(cells.flatMap(({ cell }) => cell.events));
  let best: readonly number[] | null = null;
  for (let bits = 0; bits < 2 ** junctions.length; bits++) {
    const joined = [...score.joined];
    junctions.forEach((e, i) => {
      joined[e] = ((bits >> i) & 1) === 1;
    });
    const within = cells.every(({ cell, form }) => {
      const bowing = cell.events.slice(1).map(e => !joined[e]);
      const { lastFrom } = strokeTerms(form);
      const own = bowing.every((x, j) => x === form.written[j]);
      return own || strokesOf(bowing).every(([from, last]) => last <= lastFrom(from));
    });
    if (!within) continue;
    const laid = layScore({ ...score, joined });
    const { faults, reversals } = troublesOf(score, laid, passages);
    if (faults.size + reversals.size > 0) continue;
    const cost = cells.reduce(
      (sum, { cell, form }) =>
        bowingCost(
          { ...form, strongBeat: null },
          cell.events.slice(1).map(e => !joined[e]),
        ).map((x, t) => x + (sum[t] ?? 0)),
      [0, 0, 0, 0, 0],
    );
    const wanted = presetOf(settings, context.tune, null).strongBeat;
    cost[2] = score.performance.notes.filter(
      (n, k) =>
        wanted !== null &&
        free.has(n.event) &&
        context.strong[n.event] &&
        laid.strokes[laid.strokeOf[k] ?? -1]?.direction !== wanted,
    ).length;
    const t = best ? cost.findIndex((x, i) => x !== best?.[i]) : 0;
    if (!best || (t >= 0 && (cost[t] ?? 0) < (best[t] ?? 0))) best = cost;
  }
  return best;
}

/** A few quavers, some slurred. */
const bar = fc
  .array(fc.tuple(fc.constantFrom('A', 'B', 'c', 'd', 'e'), fc.boolean()), {
    minLength: 2,
    maxLength: 4,
  })
  .map(notes =>
    notes
      .map(([n], i) => {
        const opens = notes[i]?.[1] && !(i > 0 && notes[i - 1]?.[1]) && i + 1 < notes.length;
        const closes = i > 0 && notes[i - 1]?.[1] && !(i > 1 && notes[i - 2]?.[1]);
        return `${opens && !closes ? '(' : ''}${n}${closes ? ')' : ''}`;
      })
      .join(''),
  );

test('the same optimum as trying every bowing of every cell, up to four cells', () => {
  let solved = 0;
  const stroke = fc.constantFrom('down' as const, 'up' as const);
  fc.assert(
    fc.property(bar, bar, bar, bar, stroke, fc.boolean(), (a, b, c, d, direction, endings) => {
      const abc = endings ? `|:${a}|1 ${b}:|2 ${c}|:${d}|c4:|` : `|:${a}|${b}:||:${d}|c4:|${c}|`;
      const tune = tuneOf(abc, 'M:none\nL:1/8\nR:jig');
      const last = tune.bars.find(x => x.end - x.first === 1)?.name ?? '';
      const passages = [passageOf(tune, last, direction)];
      const { context, score, laid } = setUp(tune, passages);
      const found = planWholeTune(context, score, laid, passages);
      const tried = cheapestByTrying(context, score, passages);
      if (found.kind === 'solved') {
        solved++;
        expect(found.cost).toEqual(tried);
        const mended = setUp(applyEdits(tune, found.changes), passages);
        const after = troublesOf(mended.score, mended.laid, passages);
        expect([...after.faults, ...after.reversals]).toEqual([]);
      } else expect(tried).toBeNull();
    }),
    { numRuns: 60 },
  );
  expect(solved).toBeGreaterThan(5);
});

describe('demands that contradict one another', () => {
  test('two signs in a body without freedom between are named', () => {
    const tune = tuneOf('|:vc4 vd4:|', 'M:4/4\nL:1/8');
    // Two like signs on neighbouring strokes are a retake that is meant.
    expect(plan(tune, [])).toMatchObject({ kind: 'solved', changes: [] });
  });
  test('an anchor that ends a part and must begin it too', () => {
    const tune = tuneOf('|:c4 d4|e8:|', 'M:4/4\nL:1/8');
    const passages = [passageOf(tune, 'A1', 'down'), passageOf(tune, 'A2', 'down')];
    const found = plan(tune, passages);
    expect(found).toEqual({
      kind: 'contradiction',
      demands: [{ kind: 'anchor', id: 'A1', pass: 2 }],
    });
  });
});

test('parity equations: solutions hold, and contradictions are as small as trying finds', () => {
  const equation = fc.record({
    of: fc.array(fc.nat(4), { maxLength: 4 }),
    sum: fc.nat(1),
  });
  fc.assert(
    fc.property(fc.array(equation, { maxLength: 7 }), equations => {
      const holds = (p: readonly number[], set: typeof equations): boolean =>
        set.every(e => e.of.reduce((s, u) => s ^ (p[u] ?? 0), 0) === e.sum);
      const all = Array.from({ length: 32 }, (_, b) => [0, 1, 2, 3, 4].map(u => (b >> u) & 1));
      const found = solveParities(5, equations);
      if (found.kind === 'solved') {
        expect(all.filter(p => holds(p, equations))).toHaveLength(2 ** found.free.length);
        expect(holds(found.one, equations)).toBe(true);
        return;
      }
      const clashes = (set: typeof equations): boolean => !all.some(p => holds(p, set));
      const sizes = Array.from({ length: 2 ** equations.length }, (_, b) =>
        equations.filter((_, i) => (b >> i) & 1),
      ).filter(clashes);
      expect(clashes(found.equations.flatMap(i => equations[i] ?? []))).toBe(true);
      expect(found.equations).toHaveLength(Math.min(...sizes.map(s => s.length)));
    }),
    { numRuns: 100 },
  );
});

test('the notes before an anchor are bowed within the limits of its own level', () => {
  const tune = tuneOf('cdef gabc|dBGB c3 B|c8|', 'M:4/4\nL:1/8\nR:reel');
  // A beginner who slurs nothing yet has no way to turn the bow; the book's own level has one.
  const beginner = { longestSlur: 1, longestStroke: 1.5 };
  const bowing = { ...settings, limits: { ...settings.limits, beginner } };
  const wholeFor = (level: 'beginner' | null) =>
    studyOf(tune, { anchors: [anchorAt('A3', 'up', level)], bowing }).bowing.whole;
  expect(wholeFor('beginner')).toEqual({ kind: 'beyond-limits' });
  expect(wholeFor(null)).toMatchObject({ kind: 'solved', changes: [{ kind: 'slur' }] });
});
