import { describe, expect, test } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bowingContext } from '../../shared/bowing/lead-in-of.ts';
import { type Proposal, proposeBowings } from '../../shared/bowing/propose-bowings.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import { at } from '../../shared/must.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { proposalJson } from '../../src/export/proposal-json.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

const { planSentence } = wordsFor('en', 'letters');

interface Told {
  readonly way: string;
  /** `A1:2-3 A2:7-A3:1`. */
  readonly slurs: string;
  readonly hooks: number;
  /** `A4:2 slur A4:2-A4:3`. */
  readonly bends: string;
  readonly lifts: string;
}

/** Invented for the test. The proposals for a tune, or the one in a way. */
function proposalsFor(
  type: string,
  meter: string,
  notes: string,
  preset: string | null = null,
): Told[] {
  const tune = tuneOf(`X:1\nT:Invented\nR:${type}\nM:${meter}\nL:1/8\nK:D\n${notes}`);
  const { performance, fingering, map } = studyOf(tune);
  const context = bowingContext(tune, performance, fingering, map, defaultBowing);
  const request = { start: null, anchors: [], preset, level: 'improver' } as const;
  const told = (p: Proposal): Told => {
    const json = proposalJson(tune, p) as {
      bends: { note: string; change: string }[];
      lifts: { note: string }[];
    };
    const span = (group: readonly number[]): string => {
      const [first, last] = [at(group, 0), at(group, group.length - 1)].map(
        e => noteAt(tune, e).id,
      );
      const [bar, number] = (last ?? '').split(':');
      return `${first}-${first?.startsWith(`${bar}:`) ? number : last}`;
    };
    return {
      way: p.way,
      slurs: p.slurs.map(span).join(' '),
      hooks: p.hooks.length,
      bends: json.bends.map(b => b.change).join('; '),
      lifts: json.lifts.map(l => l.note).join(' '),
    };
  };
  return proposeBowings(context, request).map(told);
}

const first = (...tune: Parameters<typeof proposalsFor>): Told => at(proposalsFor(...tune), 0);

/**
 * What a teacher would play, and why. "1883" is the count of one printed book in `practice-1883.ts`:
 * `long short short` slurs the shorts in 151 of 177 reel bars, and so on.
 */
describe('the first bowing proposed for a tune', () => {
  test('reel: after each long note the two shorts are slurred, so the bow is back down on the beat (published rule; 1883: 134 of 189)', () => {
    const { slurs, bends } = first('reel', '4/4', '|:D2FA dAFA|G2Bd gdBd|A2ce aece|F2Ad fdAd:|');
    expect(slurs).toBe('A1:2-3 A2:2-3 A3:2-3 A4:2-3');
    expect(bends).toBe('');
  });

  test('reel of equal quavers: most bars have no slur (1883: 1,073 of 1,285)', () => {
    const { slurs } = first('reel', '4/4', '|:DFAd fdAF|GBdg bgdB|Acea geca|fdAF EFGE:|');
    expect(slurs).toBe('');
  });

  test('reel with triplets: each in one stroke (1883: 47 of 47 at the head of a bar)', () => {
    const { slurs } = first('reel', '4/4', '|:(3ABA FA dAFA|(3BcB GB dBGB|(3ABA FA dAFA|EFGE D4:|');
    expect(slurs.split(' ').filter(s => /A[123]:1-3/.test(s))).toHaveLength(3);
  });

  test('reel with a pickup of two: one stroke, up, so that bar 1 comes down (1883: 66 of 102)', () => {
    const { slurs } = first('reel', 'C|', 'FG|:A2FA dAFA|G2Bd gdBd|A2ce aece|d2Ad d2:|');
    expect(slurs).toContain('A0:1-2');
  });

  test('jig of quavers: separate, every bar from a down-bow (1883: 475 of 520 bars)', () => {
    const { slurs } = first('jig', '6/8', '|:FAd fdA|GBd gdB|ceg ace|fed AFD:|');
    expect(slurs).toBe('');
  });

  test('jig, two slurred and one separate when asked: every beat down (published rule: DDU)', () => {
    const { slurs, bends } = first(
      'jig',
      '6/8',
      '|:FGA BAG|FED AFD|GAB cBA|ded d2A:|',
      'slur-two-one-separate',
    );
    expect(slurs).toBe('A1:1-2 A1:4-5 A2:1-2 A2:4-5 A3:1-2 A3:4-5 A4:1-2');
    expect(bends).toBe('');
  });

  test('slip jig of nine separate quavers a bar: four odd bars come round by themselves (counted)', () => {
    const { slurs, bends } = first(
      'slip jig',
      '9/8',
      '|:FAd fdA GBd|gdB AFD EFG|FAd fdA GBd|gec efg fdA:|',
      'single-strokes',
    );
    expect(slurs).toBe('');
    expect(bends).toBe('');
  });

  test('hornpipe: a triplet in one bow, long short short slurs the shorts (1883: 106 of 123)', () => {
    const { slurs } = first(
      'hornpipe',
      '4/4',
      '|:A>GF>E D2FA|d>cd>e f2ed|(3gfe (3dcB A>GF>A|G2E2 F2D2:|',
    );
    expect(slurs).toBe('A1:6-7 A2:6-7 A3:1-3 A3:4-6');
  });

  test('strathspey, hooked pairs when asked: dotted pairs in one stroke, parted; snaps separate (published rule: D-D U-U)', () => {
    const { slurs, hooks } = first(
      'strathspey',
      'C',
      '|:D>EF>A d<fe<d|B>AG>F E2A2|D>EF>A d<fe<d|A>GF>E D2D2:|',
      'hooked-pairs',
    );
    expect(slurs).toBe('A1:1-2 A1:3-4 A2:1-2 A2:3-4 A3:1-2 A3:3-4 A4:1-2 A4:3-4');
    expect(hooks).toBe(8);
  });

  test('waltz: down, then two and three slurred up, every bar down (counted: D U U)', () => {
    const { slurs, bends } = first(
      'waltz',
      '3/4',
      '|:D2F2A2|d4A2|G2B2d2|A4F2|E2G2B2|A4G2|F2E2C2|D4A2:|',
    );
    expect(slurs).toBe('A1:2-3 A3:2-3 A5:2-3 A7:2-3');
    expect(bends).toBe('');
  });

  test('air: long bows, a bar each, of about four seconds (common practice)', () => {
    const { way, slurs } = first(
      'air',
      '4/4',
      '|:D2E2 F2A2|B4 A4|G2F2 E2D2|E8|F2A2 d2c2|B4 A4|G2F2 E2C2|D8:|',
    );
    expect(way).toBe('long-bows');
    expect(slurs).toBe('A1:1-4 A2:1-2 A3:1-4 A5:1-4 A6:1-2 A7:1-4');
  });

  test('polka with a stroke too few: one slur in a half bar, by step, and the rest as it comes (common practice)', () => {
    const told = first('polka', '2/4', '|:FA AF|E2 FG|FA AF|E2 D2:|');
    expect(told.slurs).toBe('A2:2-3');
    expect(told.bends).toBe('slur A2:2-A2:3');
    expect(told.lifts).toBe('');
  });
});

/** Without the price of a cut triplet the table alone would part `(3dcB` two and one: the cheapest bend. */
test('a bend parts another slur, and never a triplet two and one (common practice)', () => {
  const odd = '|:A>GF>E D2FA|d>cd>e f2ed|(3gfe (3dcB A>GF>A|G2E2 D2 z2:|';
  const { slurs, bends } = first('hornpipe', '4/4', odd);
  expect(slurs).toContain('A3:1-3 A3:4-6');
  expect(bends).toMatch(/^drop A[12]:6-A[12]:7$/);
});

test('at most three ways, each another bowing; what is asked comes first', () => {
  const notes = '|:D2FA dAFA|G2Bd gdBd|A2ce aece|F2Ad fdAd:|';
  const ways = proposalsFor('reel', '4/4', notes).map(p => p.way);
  expect(ways).toEqual(['as-printed-1883', 'slurs-into-the-beat', 'single-strokes']);
  expect(proposalsFor('reel', '4/4', notes, 'three-and-one')[0]?.way).toBe('three-and-one');
});

/**
 * A jig with two slurs, a stroke short of its anchor. What is written wants one slur more or less; the
 * way of jigs slurs nothing here but crotchet and quaver, and single strokes nothing at all: each is another bowing, with its own reason.
 */
test('to an anchor: the smallest change, the tune’s way with its bend, single strokes; one of each', () => {
  const tune = tuneOf(
    'X:1\nT:Invented\nR:jig\nM:6/8\nL:1/8\nK:D\nA|:d2f (af)d|edB A2F|D(FA) dfa|e3 d2A:|',
  );
  const { bowing } = studyOf(tune, { anchors: [anchorAt('A4', 'up')] });
  const plans = bowing.anchors[0]?.leadIns[0]?.plans ?? [];
  const told = plans.map(p => p.because.filter(r => /fewest|own-way|single/.test(r)).join());
  expect(told).toEqual(['fewest-changes', 'own-way', 'single-strokes']);
  expect(plans.map(p => p.bends.length)).toEqual([0, 1, 1]);
  const way = plans[1];
  expect(way && planSentence(tune, way)).toMatch(
    /^In the tune’s own way of bowing, bent so as to arrive: slur notes? /,
  );
});
