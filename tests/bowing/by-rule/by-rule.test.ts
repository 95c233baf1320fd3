import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../../shared/bowing/apply-edit.ts';
import { defaultBowing } from '../../../shared/bowing/default-settings.ts';
import { type Dice, rollDice } from '../../../shared/drills/dice.ts';
import { editedAbc } from '../../../shared/music/edited-abc.ts';
import { playedOrder } from '../../../shared/music/played-order.ts';
import type { Direction, Tune } from '../../../shared/music/tune.ts';
import { type Study, studyTune } from '../../../shared/study.ts';
import { readEdited } from '../../../src/pipeline/read-edited.ts';
import { seed } from '../../seed.ts';
import { makeTune } from '../../tunes/make-tune.ts';
import { type NamedTune, readTunes, sampleOfReal } from '../../tunes/on-tunes.ts';
import { realTunesMissing } from '../../tunes/real-tunes.ts';
import { anchorAt, tuning } from '../study-of.ts';
import { byBinomials, byEnumeration, waysOf } from './count.ts';
import { type Laid, layByRule } from './lay.ts';

/** Random tunes tried: `npm run test:by-rule` tries a thousand. */
const most = Number(process.env.BOWBOOK_RANDOM_TUNES ?? 25);

const directions: readonly Direction[] = ['down', 'up'];

/** The tune with up to four signs on notes that begin a stroke, written into its ABC and read again. */
function withSigns(tune: Tune, dice: Dice): Tune {
  const notes = playedOrder(tune).notes.map(n => n.event);
  const marks = new Map<number, Direction>();
  for (let i = dice.below(5); i > 0; i--) marks.set(dice.pick(notes), dice.pick(directions));
  const events = tune.events.map((e, i) =>
    e.kind === 'note' && e.mark === null ? { ...e, mark: marks.get(i) ?? null } : e,
  );
  const text = editedAbc(tune, { ...tune, events });
  return readTunes([{ name: tune.title, abc: text }])[0] ?? tune;
}

interface Checked {
  mends: number;
  missed: number;
  against: number;
  conflicts: number;
  leadIns: number;
}

const ways = new Map<string, ReturnType<typeof waysOf>>();

/** Holds everything that is said of a tune's strokes to the second count. */
function check(tune: Tune, dice: Dice, sum: Checked): void {
  const bars = tune.bars.filter(b => b.end > b.first);
  if (bars.length === 0 || playedOrder(tune).notes.length < 2) return;
  const request = {
    tuning,
    bowing: defaultBowing,
    start: null,
    anchors: [anchorAt(dice.pick(bars).name, dice.pick(directions))],
    unit: null,
  };
  const study = studyTune(tune, request, readEdited);
  const { bowing, performance } = study;
  const set = new Map(bowing.anchors.map(a => [a.first, a.direction]));
  const laid = layByRule(tune, performance, set);
  const engine = bowing.plan.strokeOf.map(s => ({
    stroke: s,
    up: bowing.plan.strokes[s]?.direction === 'up',
  }));
  const why = `${tune.title} ${bowing.anchors[0]?.direction}\n${tune.source.text}`;
  expect(engine, why).toEqual(laid.strokes);
  const times = [...laid.arrivals].map(([k, up]) => ({
    pass: performance.notes[k]?.pass,
    direction: up ? 'up' : 'down',
    agrees: up === (bowing.anchors[0]?.direction === 'up'),
  }));
  expect(bowing.anchors[0]?.arrivals ?? [], why).toEqual(times);
  expectTold(study, laid, why);
  expectRepeats(study, laid, why);
  for (const anchor of bowing.anchors) {
    for (const way of anchor.leadIns) {
      const turns = way.start !== anchor.direction;
      const key = `${way.notes.length} ${turns}`;
      const counted = ways.get(key) ?? waysOf(way.notes.length, turns);
      ways.set(key, counted);
      expect([way.groupings, way.arriving], why).toEqual([counted.all, counted.arriving]);
      sum.leadIns++;
    }
    for (const mend of anchor.mends) {
      const read = readEdited(tune, applyEdit(tune, mend));
      expect(read, why).not.toBeNull();
      if (!read) continue;
      const after = layByRule(read, playedOrder(read), set);
      const told = `${JSON.stringify(mend)} ${why}`;
      for (const up of after.arrivals.values()) expect(up, told).toBe(anchor.direction === 'up');
      for (const k of after.conflicts) expect(laid.conflicts, told).toContain(k);
      sum.mends++;
    }
  }
  for (const swap of bowing.swaps) {
    const joins = (slurs: readonly (readonly number[])[]): number =>
      slurs.reduce((n, group) => n + group.length - 1, 0) % 2;
    const [keeps, flips] = [new Set(swap.keeps.map(joins)), new Set(swap.flips.map(joins))];
    expect(keeps.size, why).toBe(1);
    for (const parity of flips) expect(keeps.has(parity), why).toBe(false);
  }
  sum.missed += times.filter(t => !t.agrees).length;
  sum.against += laid.against.length;
  sum.conflicts += laid.conflicts.length;
}

/** What is wrong is told once, and nothing else is. */
function expectTold({ tune, performance, problems, bowing }: Study, laid: Laid, why: string) {
  const passes = (rule: string): string[] =>
    problems.flatMap(({ rule: broken, facts }) =>
      broken === rule && 'note' in facts
        ? [`${facts.note} ${'passes' in facts ? facts.passes : ''}`]
        : [],
    );
  const byNote = (found: readonly number[]): string[] => {
    const events = [...new Set(found.map(k => performance.notes[k]?.event ?? -1))].sort(
      (a, b) => a - b,
    );
    return events.map(e => {
      const note = tune.events[e];
      const times = found.filter(k => performance.notes[k]?.event === e);
      const id = note?.kind === 'note' ? note.id : '';
      return `${id} ${times.map(k => performance.notes[k]?.pass).join(', ')}`;
    });
  };
  expect(passes('stroke-conflict'), why).toEqual(byNote(laid.conflicts));
  const wanted = bowing.anchors[0]?.direction === 'up';
  const missed = [...laid.arrivals].flatMap(([k, up]) =>
    up !== wanted && !laid.against.includes(k) ? [k] : [],
  );
  expect(passes('arrival-missed'), why).toEqual(byNote(missed));
  expect(passes('anchor-against-mark').length, why).toBe(laid.against.length > 0 ? 1 : 0);
}

/** Each time through a part: its strokes, and whether it begins as the first time did. */
function expectRepeats({ tune, performance, bowing }: Study, laid: Laid, why: string) {
  const times = new Map<number, { strokes: Set<number>; up: boolean | null }[]>();
  performance.bars.forEach((played, i) => {
    const bar = tune.bars[played.bar];
    const was = performance.bars[i - 1];
    if (!bar) return;
    const runs = times.get(bar.part) ?? [];
    times.set(bar.part, runs);
    const anew = !was || tune.bars[was.bar]?.part !== bar.part || played.bar <= was.bar;
    if (anew) runs.push({ strokes: new Set(), up: null });
    const run = runs.at(-1);
    for (let k = played.first; run && k < played.end; k++) {
      const { stroke, up } = laid.strokes[k] ?? { stroke: -1, up: false };
      if (laid.strokes[k - 1]?.stroke !== stroke) run.strokes.add(stroke);
      if (run.up === null && !bar.pickup) run.up = up;
    }
  });
  for (const repeat of bowing.repeats) {
    const runs = (times.get(repeat.part) ?? []).filter(r => r.up !== null);
    if (runs.length !== repeat.strokes.length) continue; // a part of pickups alone
    expect(repeat.strokes, why).toEqual(runs.map(r => r.strokes.size));
    const second = runs[1];
    const alike = second ? (second.up === runs[0]?.up ? 'same' : 'reversed') : null;
    expect(repeat.secondPass, why).toBe(alike);
  }
}

const checkAll = (tunes: readonly NamedTune[]): Checked => {
  const sum = { mends: 0, missed: 0, against: 0, conflicts: 0, leadIns: 0 };
  readTunes(tunes).forEach((tune, i) => {
    const dice = rollDice('by rule', seed + i);
    check(withSigns(tune, dice), dice, sum);
  });
  return sum;
};

/**
 * A second count of the bow, written from the words of `docs/writing-a-book.md` and sharing no code with
 * the first: strokes of every note every time through, arrivals, what is told of signs and anchors,
 * numbers of ways, repeats, other ways of a phrase, and every mend that is offered.
 */
describe('a second count of the bow agrees', () => {
  test(`on ${most} random tunes with signs and an anchor`, { timeout: 3_600_000 }, () => {
    const made = Array.from({ length: most }, (_, i) => makeTune((seed % 1000) * 1000 + i));
    const sum = checkAll(made);
    console.log(`by rule, ${most} random tunes: ${JSON.stringify(sum)}`);
    expect(Math.min(sum.mends, sum.missed, sum.conflicts, sum.leadIns)).toBeGreaterThan(0);
  });
  test('on real tunes with signs and an anchor', { timeout: 3_600_000 }, context => {
    context.skip(realTunesMissing !== null, realTunesMissing ?? '');
    const tunes = sampleOfReal(12);
    const sum = checkAll(tunes);
    console.log(`by rule, ${tunes.length} real tunes: ${JSON.stringify(sum)}`);
    expect(sum.mends).toBeGreaterThan(0);
  });
  test('both ways of counting ways agree', () => {
    for (let notes = 1; notes <= 16; notes++) {
      for (const turns of [true, false]) {
        expect(byBinomials(notes, turns)).toEqual(byEnumeration(notes, turns));
      }
    }
  });
});
