import type { BowingSettings, Limits, PracticeTempo, Preset } from './settings.ts';

/**
 * Default settings of bowing; `bowbook.yaml` can replace each. None is a rule: limits, tempi and patterns are
 * common practice, without a published source.
 */

const limits: Readonly<Record<'beginner' | 'improver' | 'advanced', Limits>> = {
  beginner: { longestSlur: 2, longestStroke: 1.5 },
  improver: { longestSlur: 3, longestStroke: 1.5 },
  advanced: { longestSlur: 4, longestStroke: 1.5 },
};

/** Values of a preset that leave everything to the level and the pattern. */
const plain = {
  strongBeat: 'down',
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: null,
  longestStroke: null,
  pattern: null,
  pickups: null,
  slurOver: 'half-bar',
  hooks: false,
} as const;

/** Slurs where a book of dance tunes prints them (`practice-1883.ts`): printed practice, not recorded playing. */
const asPrinted: Preset = {
  ...plain,
  name: 'as printed in Boston, 1883',
  pattern: 'as-printed-1883',
};

/** Strathspey: each dotted pair in one stroke, its notes separated: D-D U-U (`docs/writing-a-book.md`). */
const hookedPairs: Preset = {
  ...plain,
  name: 'hooked pairs',
  strongBeat: null,
  pattern: 'dotted-pairs',
  hooks: true,
};

/** Hornpipe in dotted rhythm: the short note slurred into the next long (common practice). */
const shortIntoLong: Preset = {
  ...plain,
  name: 'short into long',
  strongBeat: null,
  intoBeat: true,
  phraseEndsChange: false,
  pattern: 'short-into-long',
  slurOver: 'bar',
};

/** Single strokes, in no fixed relation to the beats. */
const singleStrokes: Preset = {
  ...plain,
  name: 'single strokes',
};

/** Jig: each beat a slur of two and one separate, every beat down (DDU). */
const slurTwoOneSeparate: Preset = {
  ...plain,
  name: 'slur two, one separate',
  pattern: { every: '3/8', slurs: ['0-1/8'] },
};

/** Two-note slurs from the end of one beat to the start of the next (4-5, 8-1). */
const slursIntoTheBeat: Preset = {
  ...plain,
  name: 'slurs into the beat',
  strongBeat: null,
  intoBeat: true,
  phraseEndsChange: false,
  pattern: { every: '1/2', slurs: ['3/8-1/2'] },
  slurOver: 'bar',
};

/** Up-slurs of three over the beat, single down-bows between them. */
const threeAndOne: Preset = {
  ...plain,
  name: 'three and one',
  strongBeat: 'up',
  intoBeat: true,
  phraseEndsChange: false,
  longestSlur: 3,
  pattern: { every: '1/2', slurs: ['3/8-1/2', '0-1/8'] },
  slurOver: 'bar',
};

/** Down, then the second and third beat slurred up: D U U. */
const waltzBow: Preset = {
  ...plain,
  name: 'one and two slurred',
  pattern: { every: '3/4', slurs: ['1/4-1/2', '1/4-3/8', '3/8-1/2', '1/2-5/8'] },
};

/** Slurs of five to eight notes, for slow airs and strong players. */
const longBows: Preset = {
  ...plain,
  name: 'long bows',
  strongBeat: null,
  longestSlur: 8,
  // An air's stroke may last about four seconds (common practice).
  longestStroke: 4,
  pattern: 'whole-bar',
};

const tempo = (beat: string, learning: number, slow: number, session: number): PracticeTempo => ({
  beat,
  learning,
  slow,
  session,
});

/** Default limits by level, presets by tune type, and practice tempi. */
export const defaultBowing: BowingSettings = {
  level: 'improver',
  limits,
  presets: {
    'as-printed-1883': asPrinted,
    'single-strokes': singleStrokes,
    'slur-two-one-separate': slurTwoOneSeparate,
    'slurs-into-the-beat': slursIntoTheBeat,
    'three-and-one': threeAndOne,
    'one-and-two-slurred': waltzBow,
    'long-bows': longBows,
    'hooked-pairs': hookedPairs,
    'short-into-long': shortIntoLong,
  },
  presetFor: {
    reel: 'as-printed-1883',
    jig: 'as-printed-1883',
    'slip jig': 'as-printed-1883',
    hornpipe: 'as-printed-1883',
    polka: 'single-strokes',
    slide: 'slur-two-one-separate',
    waltz: 'one-and-two-slurred',
    strathspey: 'as-printed-1883',
    march: 'single-strokes',
    air: 'long-bows',
  },
  // The middle of the range in common use for each type; `air` and `march` are estimates.
  tempi: {
    reel: tempo('1/2', 50, 78, 105),
    jig: tempo('3/8', 60, 88, 112),
    'slip jig': tempo('3/8', 60, 88, 112),
    hornpipe: tempo('1/2', 48, 65, 82),
    polka: tempo('1/4', 70, 98, 130),
    slide: tempo('3/8', 70, 100, 132),
    waltz: tempo('1/4', 68, 88, 115),
    strathspey: tempo('1/4', 82, 110, 134),
    march: tempo('1/4', 70, 84, 96),
    air: tempo('1/4', 50, 60, 72),
  },
  restart: null,
};
