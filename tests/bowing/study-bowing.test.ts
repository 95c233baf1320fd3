import { describe, expect, test } from 'vitest';
import { applyEdit, applyEdits } from '../../shared/bowing/apply-edit.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

const { editSentence, planSentence } = wordsFor('en', 'letters');

/**
 * Invented for the tests: two parts, separate notes, the first phrase of A coming back. As it stands, bar 4
 * is a stroke short of eight, and bar 5 is reached on an up-bow.
 */
const reel = (a4 = 'edce d2cd', a8 = 'd4 d4'): Tune =>
  tuneOf(`X:1
T:The Test Bench
R:reel
M:4/4
L:1/8
K:D
|:fdAd fgaf|gfed cAGE|fdAd fgaf|${a4}|dBAF GBdB|AFDF EDCB,|DFAd fedc|${a8}:|
|:D2FA dAFA|BAGF EDCE|DEFA dfed|cAGE D4:|`);

const conflictsOf = (tune: Tune) =>
  studyOf(tune).problems.filter(p => p.rule === 'stroke-conflict');

const missed = (study: ReturnType<typeof studyOf>) =>
  study.problems.filter(p => p.rule === 'arrival-missed');

describe('an anchor that is missed', () => {
  const tune = reel();
  const anchors = [anchorAt('A5-A6', 'down')];
  const study = studyOf(tune, { anchors });
  const anchor = study.bowing.anchors[0];

  test('is said, once, with the passes and the best mend', () => {
    const [problem, ...more] = missed(study);
    expect(more).toEqual([]);
    expect(problem?.facts).toMatchObject({ anchor: 'turn', note: 'A5:1' });
    expect(problem?.facts.passes).toBe('1, 2');
    expect(anchor?.arrivals.map(a => a.direction)).toEqual(['up', 'up']);
  });

  test('has mends, and every one of them mends the tune when written and read again', () => {
    expect(anchor?.mends.length).toBe(6);
    expect(anchor?.moreMends).toBeGreaterThan(4);
    for (const edit of anchor?.mends ?? []) {
      const mended = studyOf(applyEdit(tune, edit), { anchors });
      expect(missed(mended).map(() => editText(tune, edit))).toEqual([]);
      expect(mended.problems.filter(p => p.rule === 'stroke-conflict')).toEqual([]);
    }
  });

  test('has plans, each of which arrives when written, with one sentence', () => {
    const plans = anchor?.leadIns.flatMap(l => l.plans) ?? [];
    expect(plans.length).toBeGreaterThan(0);
    for (const plan of plans) {
      expect(missed(studyOf(applyEdits(tune, plan.changes), { anchors }))).toEqual([]);
      expect(planSentence(tune, plan)).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('counts every way: n notes, 2^(n-1), half of them arriving', () => {
    const lead = anchor?.leadIns[0];
    const n = BigInt(lead?.notes.length ?? 0);
    expect(n).toBe(31n);
    expect(lead?.groupings).toBe(2n ** (n - 1n));
    expect(lead?.arriving).toBe(2n ** (n - 2n));
    expect(lead?.allowedArriving).toBeGreaterThan(0n);
  });
});

test('48 separate quavers before the anchor can be bowed in 2^47 ways, and half of them arrive', () => {
  const tune = tuneOf(`X:1
T:Forty-eight
R:reel
M:4/4
L:1/8
K:D
|:DEFG ABAG|FGAB AGFE|DEFG ABAG|FGAB AGFE|DEFG ABAG|FGAB AGFE|D2F2 A2F2|D8:|`);
  const { bowing } = studyOf(tune, { anchors: [anchorAt('A7-A8', 'up')] });
  const lead = bowing.anchors[0]?.leadIns[0];
  expect(lead?.strokes).toBe(48);
  expect(String(lead?.groupings)).toBe('140737488355328');
  expect(String(lead?.arriving)).toBe('70368744177664');
  expect(bowing.anchors[0]?.arrivals).toMatchObject([
    { pass: 1, direction: 'down', agrees: false },
    { pass: 2, direction: 'down', agrees: false },
  ]);
});

test('an anchor that is reached keeps the teacher’s bowing first, and needs no mend', () => {
  const { bowing, problems } = studyOf(reel('edce dBcd'), {
    anchors: [anchorAt('A5-A6', 'down')],
  });
  const [anchor] = bowing.anchors;
  expect(anchor?.arrivals.map(a => a.agrees)).toEqual([true, true]);
  expect(anchor?.mends).toEqual([]);
  expect(problems).toEqual([]);
  expect(anchor?.leadIns).toHaveLength(1);
  // The way of reels slurs nothing in these bars, and the notes are single strokes already.
  expect(anchor?.leadIns[0]?.plans).toMatchObject([{ changes: [], because: ['as-written'] }]);
});

test('passes that come to the lead-in on different strokes have no one plan', () => {
  const anchors = [anchorAt('A5-A6', 'down')];
  const tune = reel('edce dBcd', 'd8');
  const { bowing } = studyOf(tune, { anchors });
  const [anchor] = bowing.anchors;
  expect(anchor?.arrivals.map(a => a.agrees)).toEqual([true, false]);
  expect(anchor?.leadIns.map(l => [l.start, l.passes, l.plans])).toEqual([
    ['down', [1], []],
    ['up', [2], []],
  ]);
  for (const edit of anchor?.mends ?? []) {
    expect(missed(studyOf(applyEdit(tune, edit), { anchors }))).toEqual([]);
  }
});

test('identical phrases inside the lead-in are bowed alike', () => {
  const tune = reel();
  const { bowing } = studyOf(tune, { anchors: [anchorAt('A8', 'down')], unit: 1 });
  const plans = bowing.anchors[0]?.leadIns.flatMap(l => l.plans) ?? [];
  const alike = plans.filter(p => p.because.includes('phrases-alike'));
  expect(alike.length).toBeGreaterThan(0);
  const within = (bar: string, slurs: readonly (readonly number[])[]): string =>
    slurs
      .map(g =>
        g.map(e => {
          const n = tune.events[e];
          return n?.kind === 'note' ? n.id : '';
        }),
      )
      .filter(ids => ids[0]?.startsWith(`${bar}:`))
      .map(ids => ids.join(' ').replaceAll(`${bar}:`, ''))
      .join(', ');
  for (const plan of alike) expect(within('A1', plan.slurs)).toBe(within('A3', plan.slurs));
});

describe('problems of anchors', () => {
  test('a passage that is not in the tune', () => {
    const { problems } = studyOf(reel(), { anchors: [anchorAt('B9', 'up')] });
    expect(problems[0]).toMatchObject({
      rule: 'anchor-not-in-tune',
      severity: 'error',
      actual: 'B9',
    });
  });
  test('no start and no sign', () => {
    const { problems } = studyOf(reel(), { anchors: [anchorAt('A5', null)] });
    expect(problems[0]).toMatchObject({ rule: 'anchor-without-stroke', severity: 'error' });
  });
});

describe('a sign that the count does not reach', () => {
  const tune = tuneOf('vcdef gabc|vdefg abcd|ed e4 z2|', 'M:4/4\nL:1/8');
  const missed = tuneOf('|:vcdef gabc|dedc BAu B2|c4 B4:|', 'M:4/4\nL:1/8');

  test('agreeing signs say nothing', () => {
    expect(conflictsOf(tune)).toEqual([]);
  });
  test('is said once, with its passes and the count since the last sign', () => {
    const conflicts = conflictsOf(missed);
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({
      facts: { note: 'A2:7', passes: '1, 2', since: 14, counted: 'down' },
      actual: 'up',
      expected: ['down'],
    });
  });
  test('has mends, and the one that is told mends it when written', () => {
    const [conflict] = conflictsOf(missed);
    expect(conflict?.facts.mends).toBeGreaterThan(5);
    const [, from, to] = /^slur (\S+)-(\S+)$/.exec(String(conflict?.facts.mend)) ?? [];
    const index = (id?: string): number =>
      missed.events.findIndex(e => e.kind === 'note' && e.id === id);
    expect(index(from)).toBeGreaterThanOrEqual(0);
    const notes = [index(from), index(to)];
    expect(conflictsOf(applyEdit(missed, { kind: 'slur', notes }))).toEqual([]);
  });
  test('two like signs on neighbouring strokes are a silent retake; so is one after a breath', () => {
    for (const abc of ['vcvdef gabc|', 'cde!breath!f vgabc|', 'cdez vgabc|']) {
      expect(conflictsOf(tuneOf(abc))).toEqual([]);
    }
  });
});

describe('repeats', () => {
  test('an odd part starts reversed the second time; each mend puts it right', () => {
    const tune = tuneOf('|:cdef gabc|dBGB c2d2|edcB A2G2|c4 d2c2:|', 'M:4/4\nL:1/8');
    const odd = applyEdit(tune, { kind: 'slur', notes: [0, 1] });
    const passes = [tune, odd].map(t => studyOf(t).bowing.repeats[0]);
    expect(passes.map(r => r?.strokes)).toEqual([
      [23, 23],
      [22, 22],
    ]);
    expect(passes.map(r => r?.secondPass)).toEqual(['reversed', 'same']);
    for (const t of [tune, odd]) {
      const found = studyOf(t).bowing.repeats[0];
      if (found?.secondPass === 'same') continue;
      expect(found?.mends.length).toBeGreaterThan(0);
      for (const edit of found?.mends ?? []) {
        expect(studyOf(applyEdit(t, edit)).bowing.repeats[0]?.secondPass).toBe('same');
        expect(editSentence(t, edit)).toMatch(/\.$/);
      }
    }
  });
  test('notes whose stroke differs from pass to pass are told', () => {
    const odd = tuneOf('|:cdef ga b2|c8:|', 'M:4/4\nL:1/8');
    expect(studyOf(odd).bowing.varying).toHaveLength(0);
    const even = tuneOf('|:(cd)ef ga b2|c8:|', 'M:4/4\nL:1/8');
    expect(studyOf(even).bowing.varying).toHaveLength(8);
  });
});

test('swaps keep or flip as they say', () => {
  const tune = reel();
  const { bowing } = studyOf(tune);
  expect(bowing.swaps.length).toBeGreaterThan(1);
  for (const swap of bowing.swaps) {
    const turns = (slurs: readonly (readonly number[])[]) =>
      slurs.reduce((sum, g) => sum + g.length - 1, 0) % 2;
    const parities = [swap.keeps, swap.flips].map(all => new Set(all.map(turns)));
    expect(parities.map(s => s.size)).toEqual([1, 1]);
    expect([...(parities[0] ?? [])]).not.toEqual([...(parities[1] ?? [])]);
  }
});

test('same input, same output', () => {
  const once = () =>
    JSON.stringify(studyOf(reel(), { anchors: [anchorAt('A5-A6', 'down')] }).bowing, (_, v) =>
      typeof v === 'bigint' ? `${v}` : v,
    );
  expect(once()).toBe(once());
});

describe('where a stroke is settled', () => {
  const free = (abc: string, bars: string): string[] => {
    const tune = tuneOf(abc, 'M:4/4\nL:1/8\nR:reel');
    const [anchor] = studyOf(tune, { anchors: [anchorAt(bars, 'up')] }).bowing.anchors;
    return (anchor?.leadIns ?? []).map(l => {
      const event = tune.events[l.notes[0] ?? -1];
      return `${event?.kind === 'note' ? event.id : ''} ${l.start} ${l.notes.length}`;
    });
  };
  test('a pickup is laid so that bar 1 is down: the lead-in starts after it', () => {
    expect(free('GA|cdef gabc|defg abcd|e8|]', 'A3')).toEqual(['A1:1 down 16']);
  });
  test('at a repeat sign, an ending, a sign, the end of an anchor', () => {
    expect(free('|:cdef gabc|d8|1 efga b4:|2 e4 d4|]', 'A3/2:2')).toEqual(['A3/2:1 up 1']);
    expect(free('cdef gabc|dvefg abcd|e8|]', 'A3')).toEqual(['A2:2 down 7']);
  });
  test('notes whose own start an edit in them would turn round have no plan', () => {
    const tune = tuneOf('|:cdef gabc|defg abc2:|e8|]', 'M:4/4\nL:1/8\nR:reel');
    const anchors = [anchorAt('B1', 'up')];
    const [anchor] = studyOf(tune, { anchors }).bowing.anchors;
    expect(anchor?.leadIns.map(l => l.plans)).toEqual([[]]);
    expect(anchor?.arrivals.map(a => a.agrees)).toEqual([false]);
    // Twice through is an even number of strokes whatever is slurred: only lifting the bow helps, and
    // before B1 the breath and the sign on A1:1 would lift it at the repeat, too.
    expect(anchor?.mends).toEqual([
      { kind: 'retake', after: 14, before: 0, direction: 'down', opening: null },
    ]);
    for (const edit of anchor?.mends ?? []) {
      expect(missed(studyOf(applyEdit(tune, edit), { anchors }))).toEqual([]);
    }
    expect(studyOf(tune, { anchors }).bowing.whole).toMatchObject({ kind: 'contradiction' });
  });
  test('a sign after an anchor settles what stands before the anchor too', () => {
    const { bowing } = studyOf(tuneOf('cdef gabc|e8|vdefg abc2|', 'M:4/4\nL:1/8\nR:reel'), {
      anchors: [anchorAt('A2', 'up')],
    });
    expect(bowing.plan.strokes[0]?.direction).toBe('up');
    expect(bowing.anchors[0]?.arrivals).toEqual([{ pass: 1, direction: 'up', agrees: true }]);
  });
});

test('strokes that start anew at each part', () => {
  const tune = tuneOf('cdef gab2|]\n|:(cd)ef gabc:|', 'M:4/4\nL:1/8');
  const bowing = { ...defaultBowing, restart: 'part' as const };
  const { plan } = studyOf(tune, { bowing }).bowing;
  const barStarts = (p: typeof plan): string[] =>
    p.strokes
      .filter(s => s.notes.includes(0) || s.notes.includes(7) || s.notes.includes(15))
      .map(s => s.direction);
  expect(barStarts(plan)).toEqual(['down', 'down', 'down']);
  expect(barStarts(studyOf(tune).bowing.plan)).toEqual(['down', 'up', 'down']);
});
