import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../shared/bowing/apply-edit.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { keyChange } from '../../shared/sets/key-change.ts';
import { type SetTune, studySet } from '../../shared/sets/set-study.ts';
import { clock } from '../../shared/words/amounts.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { keyOf } from '../abc/key-of.ts';
import { readTune } from '../abc/read-abc.ts';
import { anchorAt, studyOf } from '../bowing/study-of.ts';

const { keyChangeSentence } = wordsFor('en', 'letters');

const reel = (body: string, key = 'D'): string =>
  `X:1\nT:T\nR:reel\nM:4/4\nL:1/8\nK:${key}\n${body}`;

const setTune = (abc: string, times = 1, anchors: Parameters<typeof anchorAt>[] = []): SetTune => ({
  study: studyOf(readTune(abc).tune, { anchors: anchors.map(a => anchorAt(...a)) }),
  start: null,
  restart: null,
  times,
});

/** Two bars of separate quavers: sixteen strokes, down to up. */
const even = reel('DFAd BAFA|GEFD EFGA|]');
/** A crotchet at the end: fifteen strokes, down to down. */
const odd = reel('DFAd BAFA|GEFD EFG2|]');

const joins = (...tunes: SetTune[]) =>
  studySet(tunes, defaultBowing).joins.map(({ from, to, last, first, agrees, room }) => ({
    from,
    to,
    last,
    first,
    agrees,
    room,
  }));

describe('joins of a set, counted by hand', () => {
  it('an even count of strokes goes straight on', () =>
    expect(joins(setTune(even), setTune(odd))).toEqual([
      { from: 0, to: 1, last: 'up', first: 'down', agrees: true, room: null },
    ]));

  it('an odd count meets the next tune on its own stroke', () =>
    expect(joins(setTune(odd), setTune(even))).toEqual([
      { from: 0, to: 1, last: 'down', first: 'down', agrees: false, room: 'long-note' },
    ]));

  it('a pickup before a first full bar goes up, so a tune that ends up meets it', () => {
    // One quaver before the bar: up. The tune before ends up as well.
    const pickup = setTune(reel('A|DFAd BAFA|GEFD EFG|]'));
    expect(joins(setTune(even), pickup)).toEqual([
      { from: 0, to: 1, last: 'up', first: 'up', agrees: false, room: null },
    ]);
  });

  it('a tune played more than once meets itself, before the next', () => {
    // Seven strokes in the last bar make the round odd.
    expect(joins(setTune(odd, 3), setTune(even))).toEqual([
      { from: 0, to: 0, last: 'down', first: 'down', agrees: false, room: 'long-note' },
      { from: 0, to: 1, last: 'down', first: 'down', agrees: false, room: 'long-note' },
    ]);
    expect(joins(setTune(even, 2))).toHaveLength(1);
    expect(joins(setTune(even, 1))).toEqual([]);
  });

  it('a rest at the end, a breath, or a rest before the next leaves room', () => {
    const room = (a: string, b: string) => joins(setTune(a), setTune(b))[0]?.room;
    expect(room(reel('DFAd BAFA|GEFD EFGz|]'), even)).toBe('rest');
    expect(room(reel('DFAd BAFA|GEFD EF!breath!G2|]'), even)).toBe('rest');
    expect(room(odd, reel('z|DFAd BAFA|]'))).toBe('rest');
    expect(room(even, reel('z|DFAd BAFA|]'))).toBeNull();
  });
});

describe('the smallest mend of a join', () => {
  const mendOf = (a: SetTune, b: SetTune) => studySet([a, b], defaultBowing).joins[0]?.mend ?? null;

  it('turns the end of the tune before round, and is one edit', () => {
    const before = setTune(odd);
    const mend = mendOf(before, setTune(even));
    expect(mend).not.toBeNull();
    if (!mend) return;
    const mended = { ...before, study: studyOf(applyEdit(before.study.tune, mend)) };
    expect(joins(mended, setTune(even))[0]?.agrees).toBe(true);
  });

  it('never touches an anchor, and is none where the tune ends in one', () => {
    const before = setTune(odd, 1, [['A1:5-A2:7', 'down']]);
    expect(joins(before, setTune(even))[0]?.agrees).toBe(false);
    expect(mendOf(before, setTune(even))).toBeNull();
  });

  it('is none where a part played twice would turn twice', () => {
    // Fifteen strokes a time, thirty in all: the tune ends up, as the pickup of the next begins.
    const twice = setTune(reel('|:DFAd BAFA|GEFD EFG2:|'));
    const pickup = setTune(reel('A|DFAd BAFA|GEFD EFG|]'));
    expect(joins(twice, pickup)[0]).toMatchObject({ last: 'up', first: 'up', agrees: false });
    expect(mendOf(twice, pickup)).toBeNull();
  });
});

describe('the length of a set', () => {
  it('is the bars played over the tempo, a reel in minims', () => {
    // Sixteen bars played are 32 minims: at 78 a minute 24.6 seconds, at 105 18.3.
    const tune = setTune(reel('|:DFAd BAFA|GEFD EFGA|DFAd BAFA|GEFD EFGA:|'), 2);
    const { lengths, length } = studySet([tune, tune], defaultBowing);
    expect(lengths[0]?.slow).toBeCloseTo((32 / 78) * 60, 9);
    expect(lengths[0]?.session).toBeCloseTo((32 / 105) * 60, 9);
    expect(length.slow).toBeCloseTo((64 / 78) * 60, 9);
    expect(clock(length.slow)).toBe('0:49');
    expect(clock(200.4)).toBe('3:20');
  });
});

describe('a change of key', () => {
  const words = (from: [string, 'major' | 'dorian' | 'mixolydian'], to: typeof from): string =>
    keyChangeSentence(keyChange(keyOf(...from), keyOf(...to)), 'letters');

  it('is said in letters and by where home goes', () => {
    expect(words(['D', 'major'], ['D', 'major'])).toBe('The key stays: D major.');
    expect(words(['D', 'major'], ['E', 'dorian'])).toBe(
      'From D major to E dorian: the same notes, and home moves up a tone.',
    );
    expect(words(['G', 'major'], ['A', 'major'])).toBe(
      'From G major to A major: C becomes C sharp and G becomes G sharp; home moves up a tone.',
    );
    expect(words(['A', 'major'], ['D', 'major'])).toBe(
      'From A major to D major: G sharp becomes G; home moves up a fourth.',
    );
    expect(words(['D', 'major'], ['D', 'mixolydian'])).toBe(
      'From D major to D mixolydian: C sharp becomes C; home stays.',
    );
    expect(words(['D', 'major'], ['G', 'major'])).toContain('home moves up a fourth');
    expect(words(['G', 'major'], ['D', 'major'])).toContain('home moves down a fourth');
  });
});
