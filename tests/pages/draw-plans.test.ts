import { beforeAll, describe, expect, test } from 'vitest';
import { bestPlan } from '../../shared/bowing/best-plan.ts';
import type { Study, StudyRequest } from '../../shared/study.ts';
import { studyTune } from '../../shared/study.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { planKey } from '../../src/pages/built-tune.ts';
import { drawPlans, studyPlan } from '../../src/pipeline/draw-plans.ts';
import { settings, tuneOf } from '../bowing/strokes-of.ts';
import { anchorAt, studyOf } from '../bowing/study-of.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';

/** A reel of our own whose bow comes to A4 the wrong way round, both times. */
const body = '|:(3(gfe) (dc) .B{c}A "D"~B2|ud(e f)g a-a ba|(gf)ed cBAG|F2 (ED) D4:|';

interface Case {
  readonly study: Study;
  readonly request: StudyRequest;
}

function missedCase(): Case {
  const tune = tuneOf(body, 'M:none\nL:1/8\nR:reel');
  const anchors = [
    {
      ...anchorAt('A4', 'down', 'advanced'),
      asked: [{ level: 'beginner' as const, preset: null }],
    },
  ];
  const first = studyOf(tune, { anchors });
  const direction = first.bowing.anchors[0]?.arrivals[0]?.direction === 'down' ? 'up' : 'down';
  const request: StudyRequest = {
    tuning: first.tuning,
    bowing: settings,
    start: null,
    anchors: anchors.map(a => ({ ...a, start: direction })),
    unit: null,
  };
  return { study: studyTune(tune, request), request };
}

const arrives = ({ bowing }: Study): boolean =>
  bowing.anchors.length > 0 && bowing.anchors.every(a => a.arrivals.every(x => x.agrees));

describe('a plan written into the ABC and read again', () => {
  let found: Case;
  beforeAll(() => {
    found = missedCase();
  });

  test('arrives, every plan of it, in as many strokes as it says, with the same notes', () => {
    const { study, request } = found;
    expect(arrives(study)).toBe(false);
    const [anchor] = study.bowing.anchors;
    const leadIn = anchor?.leadIns[0];
    expect(leadIn?.plans).toHaveLength(3);
    for (const plan of leadIn?.plans ?? []) {
      const played = studyPlan(study, request, plan);
      expect(arrives(played)).toBe(true);
      expect(played.bowing.anchors[0]?.leadIns[0]?.strokes).toBe(plan.strokes);
      expect(played.performance.notes).toEqual(study.performance.notes);
    }
  });

  test('is drawn for each level asked for, with the slurs of its plan', () => {
    const { study, request } = found;
    const planned = drawPlans(study, request, engraveTune);
    const best = [study.bowing.anchors[0], ...(study.bowing.anchors[0]?.asked ?? [])].map(
      a => bestPlan(a?.leadIns ?? [])?.plan,
    );
    expect(best).toHaveLength(2);
    for (const plan of best) {
      if (!plan) throw new Error('no plan');
      const score = planned.get(planKey(plan));
      expect(score).toBeDefined();
      const played = studyPlan(study, request, plan);
      expect(score?.cells.map(c => c.svg)).toEqual(engraveTune(played).cells.map(c => c.svg));
      expect(score?.cells.map(c => c.svg)).not.toEqual(engraveTune(study).cells.map(c => c.svg));
    }
  });

  test('has no drawing of its own where it is the bowing as written', () => {
    const { study, request } = found;
    const direction = study.bowing.anchors[0]?.direction === 'down' ? 'up' : 'down';
    const own = {
      ...request,
      anchors: request.anchors.map(a => ({ ...a, start: direction }) as const),
    };
    const written = studyTune(study.tune, own);
    expect(arrives(written)).toBe(true);
    expect(drawPlans(written, own, engraveTune).size).toBe(0);
  });
});

onTunes('best plans, written in and read again, arrive', 12, tunes => {
  const wrong: string[] = [];
  let checked = 0;
  for (const tune of readTunes(tunes)) {
    const bars = tune.parts.at(-1)?.bars.map(b => tune.bars[b]) ?? [];
    const last = bars.findLast(b => b && b.endings.length === 0 && !b.pickup);
    if (!last || tune.events[last.first]?.kind !== 'note') continue;
    const anchors = (['down', 'up'] as const).map(start => ({
      ...anchorAt(last.name, start, 'advanced'),
      id: start,
    }));
    for (const anchor of anchors) {
      const study = studyOf(tune, { anchors: [anchor] });
      const [studied] = study.bowing.anchors;
      const plan = bestPlan(studied?.leadIns ?? [])?.plan;
      // Passes that come by different ways have a plan each: one of them need not serve all.
      if (!plan || plan.changes.length === 0 || studied?.leadIns.length !== 1) continue;
      const request: StudyRequest = {
        tuning: study.tuning,
        bowing: settings,
        start: null,
        anchors: [anchor],
        unit: null,
      };
      checked++;
      if (!arrives(studyPlan(study, request, plan))) wrong.push(`${tune.title}, ${anchor.id}`);
    }
  }
  expect(checked).toBeGreaterThan(20);
  expect(wrong).toEqual([]);
});
