import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../shared/review/day.ts';
import { dueTunes, planSession, type Turn } from '../../shared/review/plan-session.ts';
import { planWeeks } from '../../shared/review/plan-weeks.ts';
import {
  dueDay,
  intervals,
  type ReviewState,
  type ReviewTune,
  stateOf,
  type TuneState,
  ticked,
} from '../../shared/review/review-state.ts';

const day = (text: string): number => readDay(text) ?? Number.NaN;
const today = day('2026-11-25');

const tune = (id: string, lessons: readonly string[], seconds = [24, 24]): ReviewTune => ({
  id,
  lessons: lessons.map(day),
  parts: seconds.map((s, i) => ({ name: 'ABCDEFG'.charAt(i), seconds: s })),
});

describe('a tune comes back', () => {
  it('after 1, 3, 7, 14, 30, 60 days, and then every 60', () => {
    expect(intervals).toEqual([1, 3, 7, 14, 30, 60]);
    let state: TuneState = { step: 0, last: today };
    const gaps: number[] = [];
    for (let i = 0; i < 8; i++) {
      gaps.push(dueDay(state) - state.last);
      state = ticked(state, true, dueDay(state));
    }
    expect(gaps).toEqual([1, 3, 7, 14, 30, 60, 60, 60]);
  });

  it('one step sooner when it had gone, never sooner than tomorrow', () => {
    expect(ticked({ step: 3, last: today - 14 }, false, today)).toEqual({ step: 2, last: today });
    expect(ticked({ step: 0, last: today - 1 }, false, today)).toEqual({ step: 0, last: today });
    expect(dueDay(ticked({ step: 0, last: today - 1 }, false, today))).toBe(today + 1);
  });

  it('first the day after the newest lesson that has been', () => {
    const t = tune('wet-rope', ['2026-10-06', '2026-11-24', '2026-12-01']);
    expect(stateOf(t, {}, today)).toEqual({ step: 0, last: day('2026-11-24') });
    expect(stateOf(t, {}, day('2026-10-05'))).toBeNull();
    const known: ReviewState = { 'wet-rope': { step: 4, last: today - 2 } };
    expect(stateOf(t, known, today)).toEqual({ step: 4, last: today - 2 });
  });

  it('called by the name of anything', () =>
    expect(stateOf(tune('constructor', []), {}, today)).toBeNull());
});

describe('a session', () => {
  const names = (turns: readonly Turn[]): string =>
    turns.map(t => (t.kind === 'rest' ? 'rest' : `${t.tune}${t.part ?? '*'}`)).join(' ');

  it('takes the most overdue for its wait first', () => {
    const tunes = [
      tune('a', ['2026-11-24']),
      tune('b', ['2026-11-20']),
      tune('c', ['2026-11-25']),
      tune('d', []),
    ];
    // a has waited its one day, b five days too long for one; e is 4 days late of 30.
    const state: ReviewState = { e: { step: 4, last: today - 34 } };
    expect(dueTunes([...tunes, tune('e', [])], state, today).map(t => t.id)).toEqual([
      'b',
      'e',
      'a',
    ]);
  });

  it('goes round the tunes a part at a time, then plays each whole', () => {
    const tunes = [tune('a', ['2026-11-24']), tune('b', ['2026-11-24'], [24, 24, 24])];
    const { turns, waiting } = planSession(tunes, {}, today, 30);
    // Day 20782 is even, and a multiple of three and one more: a begins with A, b with its second.
    expect(names(turns)).toBe('a0 b1 a1 b2 a* b0 b*');
    expect(waiting).toEqual([]);
    // Three times 24 seconds is 72, a minute and a half; twice through both parts is 96, two minutes.
    expect(turns[0]?.seconds).toBe(90);
    expect(turns[4]?.seconds).toBe(120);
  });

  it('begins with another part each day', () => {
    const tunes = [tune('a', ['2026-11-01'])];
    const first = (at: number) => names(planSession(tunes, {}, at, 20).turns).split(' ')[0];
    expect([first(today), first(today + 1), first(today + 2)]).toEqual(['a0', 'a1', 'a0']);
  });

  it('takes as many as have room, and counts what is ticked already', () => {
    const tunes = ['a', 'b', 'c', 'd'].map(id => tune(id, ['2026-11-24']));
    // Each needs 90 + 90 + 120 seconds, five minutes.
    expect(planSession(tunes, {}, today, 10).tunes).toEqual(['a', 'b']);
    expect(planSession(tunes, {}, today, 10).waiting).toEqual(['c', 'd']);
    const oneDone: ReviewState = { a: { step: 1, last: today } };
    expect(planSession(tunes, oneDone, today, 10).tunes).toEqual(['b']);
    const bothDone: ReviewState = { ...oneDone, b: { step: 1, last: today } };
    expect(planSession(tunes, bothDone, today, 10).tunes).toEqual([]);
  });

  it('takes one tune always, in as many turns as there is room for', () => {
    const { tunes, turns } = planSession([tune('a', ['2026-11-01'])], {}, today, 3);
    expect(tunes).toEqual(['a']);
    expect(names(turns)).toBe('a0 a1');
  });

  it('has five minutes off in every half hour', () => {
    const tunes = 'abcdefghijklmn'.split('').map(id => tune(id, ['2026-11-01']));
    const { turns } = planSession(tunes, {}, today, 60);
    let played = 0;
    for (const turn of turns) {
      played = turn.kind === 'rest' ? 0 : played + turn.seconds;
      expect(played).toBeLessThanOrEqual(25 * 60);
    }
    expect(turns.some(t => t.kind === 'rest')).toBe(true);
    expect(turns.reduce((sum, t) => sum + t.seconds, 0)).toBeLessThanOrEqual(60 * 60);
  });
});

const anyTunes = fc.uniqueArray(
  fc.record({
    id: fc.stringMatching(/^[a-z][a-z-]{0,8}$/),
    lessons: fc.array(fc.integer({ min: today - 200, max: today + 30 }), { maxLength: 3 }),
    parts: fc.array(
      fc.record({ name: fc.constant('A'), seconds: fc.float({ min: 0, max: 300, noNaN: true }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
  }),
  { selector: t => t.id, maxLength: 20 },
);
const minutesOf = fc.integer({ min: 5, max: 120 });

describe('whatever the tunes', () => {
  it('a session plays only what is due, keeps to its minutes and says what waits', () =>
    fc.assert(
      fc.property(anyTunes, minutesOf, (tunes, minutes) => {
        const due = dueTunes(tunes, {}, today).map(t => t.id);
        const session = planSession(tunes, {}, today, minutes);
        expect([...session.tunes, ...session.waiting].sort()).toEqual([...due].sort());
        expect(session.tunes.length > 0).toBe(due.length > 0);
        const seconds = session.turns.map(t => (t.kind === 'rest' ? 0 : t.seconds));
        const all = seconds.reduce((sum, s) => sum + s, 0);
        expect(all <= minutes * 60 || session.tunes.length === 1).toBe(true);
      }),
    ));

  it('a plan for four weeks leaves no tune out that is due and has room', () =>
    fc.assert(
      fc.property(anyTunes, tunes => {
        const days = planWeeks(tunes, {}, today, 10_000);
        expect(days.map(d => d.day)).toEqual(Array.from({ length: 28 }, (_, i) => today + i));
        // With all the time in the world each tune comes exactly on its days.
        for (const t of tunes) {
          const from = stateOf(t, {}, today);
          const played = days.filter(d => d.tunes.includes(t.id)).map(d => d.day);
          if (from && dueDay(from) <= today) {
            expect(played).toEqual([today, today + 3, today + 10, today + 24]);
          }
        }
      }),
    ));
});
