import { describe, expect, test } from 'vitest';
import { bowingInput } from '../../shared/bowing/bowing-input.ts';
import { bowingContext, leadInModel, presetOf, slurFault } from '../../shared/bowing/lead-in-of.ts';
import { bestBowings } from '../../shared/bowing/plan-lead-in.ts';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { settings, tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf, tuning } from './study-of.ts';

/** What each slur from one note to the next meets, in a tune fingered in first position. */
function slursOver(body: string, head = 'M:none\nL:1/8\nR:jig', tempo?: { seconds: number }) {
  const tune = tuneOf(body, head);
  const performance = playedOrder(tune);
  const { fingering } = assignFingers(tune, tuning);
  const limits = { ...settings.limits.improver };
  if (tempo) limits.longestStroke = tempo.seconds;
  const own = { ...settings, limits: { ...settings.limits, improver: limits } };
  const context = bowingContext(tune, performance, fingering, mapSections(tune), own);
  const preset = presetOf(own, tune, null);
  const aim = { start: 'down', arrive: 'up', level: 'improver', preset } as const;
  const { joined } = bowingInput(tune, performance);
  const { notes } = performance;
  const form = leadInModel(context, 0, notes.length, joined, aim);
  const faults = notes
    .slice(1)
    .map((note, i) => slurFault(context, preset, notes[i]?.event ?? -1, note));
  return { form, faults };
}

describe('what keeps two notes from one slur (common practice, no source)', () => {
  test.each<[string, string, (string | null)[]]>([
    ['a step on one string: nothing', 'A B', [null]],
    ['the same pitch again: the slur would not be heard', 'A A', ['repeated']],
    ['the same pitch with a cut between: the cut parts them', 'A {B}A', [null]],
    ['neighbouring strings', 'A e', [null]],
    ['from the D string to the E string, over the A string', 'D e', ['leap']],
    ['from the G string to the E string', 'G, e', ['leap']],
    ['out of a double stop to a string beside its nearer one', '[G,D] B', [null]],
    ['a rest between', 'A z B', ['gap']],
    ['a sign on the second note begins a stroke', 'A uB', ['signed']],
    ['a sign on the first note is where the slur begins', 'uA B', [null]],
    [
      'into and out of a treble, three quick strokes on one pitch',
      'A (3B/B/B/ c',
      ['treble', 'repeated', 'repeated', 'treble'],
    ],
    ['a triplet of three pitches is no treble', 'A (3B/c/B/ d', [null, null, null, null]],
  ])('%s', (_, body, faults) => {
    const found = slursOver(`${body}|`);
    expect(found.faults).toEqual(faults);
    expect(found.form.slurrable).toEqual(faults.map(fault => fault === null));
  });
});

describe('slurs that are rough: a skip, or another string (common practice, no source)', () => {
  test.each<[string, string, boolean]>([
    ['a step on one string', 'A B', false],
    ['a skip of a third on one string', 'A c', true],
    ['a step that goes over to the next string', 'G A', true],
    ['two notes on one string, a fourth apart', 'A d', true],
    ['a step up from the nearer note of a double stop', '[DA] B', false],
  ])('%s', (_, body, rough) => expect(slursOver(`${body}|`).form.rough).toEqual([Number(rough)]));

  test('of two slurs alike in all else, the one on one string comes first', () => {
    // F G is a step on the D string, G A a step that crosses to the A string: one slur turns the bow.
    const { form } = slursOver('F G A B|', 'M:none\nL:1/8');
    const wanting = { ...form, strongBeat: null, intoBeat: false, arrive: 'up' as const };
    const slurs = bestBowings(wanting, 3).map(r => r.bowing.findIndex(change => !change));
    // A B and F G first, both on one string; the crossing last.
    expect(slurs.at(-1)).toBe(1);
    expect(slurs).toHaveLength(3);
  });
});

describe('the longest stroke', () => {
  // A waltz goes 88 crotchets a minute in practice: 44 crotchets take 30 seconds, 2.2 take 1.5.
  test.each([30, 1.5, 45 / 88, 15 / 22])('of %s seconds holds what lasts just so long', seconds => {
    const units = slursOver('A B|', 'M:3/4\nL:1/8\nR:waltz', { seconds }).form;
    const crotchets = (seconds * 88) / 60;
    expect(units.longestStroke).toBe(Math.round(crotchets * 10080));
    expect(units.lengths).toEqual([5040, 5040]);
  });
});

describe('beats', () => {
  const marks = (body: string, head: string) => {
    const { form } = slursOver(body, head);
    const signs = (list: readonly boolean[]) => list.map(x => (x ? 'x' : '.')).join('');
    return [signs(form.strong), signs(form.onBeat)];
  };
  test('of a jig are two, at its first and fourth quaver', () =>
    expect(marks('cde fga|', 'M:6/8\nL:1/8\nR:jig')).toEqual(['x..x..', 'x..x..']));
  test('of a waltz are three, of which the first is strong', () =>
    expect(marks('c2d2e2|', 'M:3/4\nL:1/8\nR:waltz')).toEqual(['x..', 'xxx']));
  test('a pickup is counted from the end of its bar: a crotchet of 3/4 is the third beat', () =>
    expect(marks('c2|d2e2f2|', 'M:3/4\nL:1/8\nR:waltz')).toEqual(['.x..', 'xxxx']));
});

/** `docs/writing-a-book.md`, section 9: a bowing that arrives is the first plan, limits or not. */
describe('the teacher’s own slurs beyond the level', () => {
  const plansTo = (abc: string, start: 'down' | 'up') => {
    const tune = tuneOf(abc, 'M:4/4\nL:1/8\nR:reel');
    const anchors = [anchorAt('A2', start, 'beginner')];
    return studyOf(tune, { anchors }).bowing.anchors[0]?.leadIns[0]?.plans ?? [];
  };
  const longest = (slurs: readonly (readonly number[])[]): number =>
    Math.max(1, ...slurs.map(s => s.length));
  test('stand where the bow arrives with them', () => {
    const [own] = plansTo('(DEFG) ABcd|e8|', 'up');
    expect(own?.changes).toEqual([]);
    expect(own && longest(own.slurs)).toBe(4);
  });
  test('are parted in every plan where it does not', () => {
    const plans = plansTo('(DEFG) ABcd|e8|', 'down');
    expect(plans.length).toBeGreaterThan(0);
    for (const plan of plans) expect(longest(plan.slurs)).toBeLessThanOrEqual(2);
  });
});
