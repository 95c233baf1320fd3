import type { BowingSettings, Limits, PracticeTempo, Preset } from './settings.ts';

/**
 * Starting points for a book that says nothing of its own; `bowbook.yaml` replaces any of them.
 * None is a rule: limits, tempi and patterns are common practice, without a published source.
 */

const limits: Readonly<Record<'beginner' | 'improver' | 'advanced', Limits>> = {
  beginner: { longestSlur: 2, longestStroke: 1.5 },
  improver: { longestSlur: 3, longestStroke: 1.5 },
  advanced: { longestSlur: 4, longestStroke: 1.5 },
};

/** Slurs stay few and short; the strokes take the beats as they come. */
const singleStrokes: Preset = {
  name: 'single strokes',
  strongBeat: 'down',
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: null,
};

/** Jig: each beat a slur of two and one separate, every beat down (DDU). */
const slurTwoOneSeparate: Preset = {
  name: 'slur two, one separate',
  strongBeat: 'down',
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: null,
};

/** Two-note slurs that tie the end of one beat to the start of the next (4-5, 8-1). */
const slursIntoTheBeat: Preset = {
  name: 'slurs into the beat',
  strongBeat: null,
  intoBeat: true,
  phraseEndsChange: false,
  longestSlur: null,
};

/** Up-slurs of three over the beat, single down-bows between them. */
const threeAndOne: Preset = {
  name: 'three and one',
  strongBeat: 'up',
  intoBeat: true,
  phraseEndsChange: false,
  longestSlur: 3,
};

/** Down, then the second and third beat slurred up: D U U. */
const waltzBow: Preset = {
  name: 'one and two slurred',
  strongBeat: 'down',
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: null,
};

/** Slurs of five to eight notes, for slow airs and strong players. */
const longBows: Preset = {
  name: 'long bows',
  strongBeat: null,
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: 8,
};

const tempo = (beat: string, learning: number, slow: number, session: number): PracticeTempo => ({
  beat,
  learning,
  slow,
  session,
});

/** What a book starts from: limits by level, ways of bowing by tune type, practice tempi. */
export const defaultBowing: BowingSettings = {
  level: 'improver',
  limits,
  presets: {
    'single-strokes': singleStrokes,
    'slur-two-one-separate': slurTwoOneSeparate,
    'slurs-into-the-beat': slursIntoTheBeat,
    'three-and-one': threeAndOne,
    'one-and-two-slurred': waltzBow,
    'long-bows': longBows,
  },
  presetFor: {
    reel: 'slurs-into-the-beat',
    jig: 'slur-two-one-separate',
    'slip jig': 'slur-two-one-separate',
    hornpipe: 'single-strokes',
    polka: 'single-strokes',
    slide: 'slur-two-one-separate',
    waltz: 'one-and-two-slurred',
    strathspey: 'single-strokes',
    march: 'single-strokes',
    air: 'long-bows',
  },
  // The middle of each range in common use; `air` and `march` are our own guess.
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
