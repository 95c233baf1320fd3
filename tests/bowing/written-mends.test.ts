import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../shared/bowing/apply-edit.ts';
import type { Edit } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { editedAbc } from '../../shared/music/edited-abc.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import { studyTune } from '../../shared/study.ts';
import { readEdited } from '../../src/pipeline/read-edited.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf, tuning } from './study-of.ts';

const studied = (tune: Tune, bars: string, start: Direction) =>
  studyTune(
    tune,
    { tuning, bowing: defaultBowing, start: null, anchors: [anchorAt(bars, start)], unit: null },
    readEdited,
  );

const liftsOf = (mends: readonly Edit[]) => mends.filter(m => m.kind === 'retake');

/** Studies the ABC that a teacher has who writes the mend down. */
const written = (tune: Tune, mend: Edit, bars: string, start: Direction) =>
  studyOf(tuneOf(editedAbc(tune, applyEdit(tune, mend))), { anchors: [anchorAt(bars, start)] });

describe('lifts are offered as what is to be written', () => {
  const offered = (abc: string, bars: string, start: Direction, head?: string) => {
    const tune = tuneOf(abc, head);
    const { bowing } = studied(tune, bars, start);
    return liftsOf(bowing.anchors[0]?.mends ?? []).map(mend => ({
      abc: editedAbc(tune, applyEdit(tune, mend)).split('\n').at(-1),
      after: written(tune, mend, bars, start),
    }));
  };

  test('after a rest, with the sign that keeps what stands before it', () => {
    const [lift, ...more] = offered('DEFG A2z2|d4 D4|', 'A2', 'down');
    expect(more).toEqual([]);
    expect(lift?.abc).toBe('vDEFG A2z2|vd4 D4|');
    expect(lift?.after.bowing.plan.strokes.map(s => s.retake).indexOf(true)).toBe(5);
    expect(lift?.after.problems).toEqual([]);
  });
  test('after an earlier sign, no other is written', () => {
    expect(offered('vDEFG A2z2|d4 D4|', 'A2', 'down').map(l => l.abc)).toEqual([
      'vDEFG A2z2|vd4 D4|',
    ]);
  });
  test('at a phrase end without a rest, with a breath', () => {
    const lifts = offered('vDEFG ABcd|efga b4|g8|f8|', 'A3', 'up', 'M:4/4\nL:1/8\nR:reel');
    expect(lifts.map(l => l.abc)).toEqual([]);
    const wrong = offered('vDEFG ABcd|efga b4|g8|f8|', 'A3', 'down', 'M:4/4\nL:1/8\nR:reel');
    expect(wrong.map(l => l.abc)).toEqual(['vDEFG ABcd|efga !breath!b4|vg8|f8|']);
  });
  test('never where it would make a conflict the second time', () => {
    // Fifteen strokes: with the lift before A3 the repeat comes the right way round, or else not at all.
    for (const abc of ['|:DEFG ABcd|efga b4|gfed c4|d8:|', '|:DEFG AB c2|efga b4|gfed c4|d8:|']) {
      for (const start of ['up', 'down'] as const) {
        for (const lift of offered(abc, 'A3', start)) expect(lift.after.problems).toEqual([]);
      }
    }
  });
});

/** Signs that the count does not reach, and anchors that it misses. */
const faults = (tune: Tune, bars: string, start: Direction): string[] =>
  studyOf(tune, { anchors: [anchorAt(bars, start)] }).problems.flatMap(p =>
    ['stroke-conflict', 'arrival-missed', 'anchor-against-mark'].includes(p.rule)
      ? `${p.rule} ${p.place?.line}:${p.place?.column} ${'passes' in p.facts ? p.facts.passes : ''}`
      : [],
  );

onTunes('every mend that is offered mends once it is written, read and laid', 8, tunes => {
  let proved = 0;
  for (const tune of readTunes(tunes)) {
    const bars = tune.bars.filter(b => b.end > b.first && !b.pickup);
    const bar = bars[Math.floor(bars.length / 2)]?.name;
    if (!bar) continue;
    for (const start of ['down', 'up'] as const) {
      const before = faults(tune, bar, start).length;
      const { bowing } = studied(tune, bar, start);
      for (const mend of bowing.anchors[0]?.mends ?? []) {
        const read = readEdited(tune, applyEdit(tune, mend));
        expect(read, tune.title).not.toBeNull();
        if (!read) continue;
        expect(playedOrder(read).notes).toHaveLength(playedOrder(tune).notes.length);
        expect(faults(read, bar, start).length, tune.title).toBeLessThan(before);
        proved++;
      }
    }
  }
  expect(proved).toBeGreaterThan(50);
});
