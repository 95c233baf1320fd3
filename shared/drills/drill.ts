import type { Direction, Edit } from '../bowing/bowing.ts';
import type { Level } from '../bowing/settings.ts';

/** The kinds of drill that a lesson may ask for. */
export const drillKinds = [
  'call',
  'gaps',
  'count',
  'arrive',
  'start',
  'same',
  'forks',
  'into',
] as const;
export type DrillKind = (typeof drillKinds)[number];

/** What is asked for. Same tune, same ask: same drill. */
export interface DrillAsk {
  readonly kind: DrillKind;
  readonly level: Level;
  readonly seed: number;
  /**
   * Id of an anchor: `arrive` and `into` are about it, the other kinds keep to the part it stands
   * in. null where the drill may choose.
   */
  readonly to: string | null;
}

/**
 * A drill: question and answer as data, worded in `words/`. Events, bars and phrases are indices
 * into the tune and its map; `choices` hold the answer at `right`, and no other that would do.
 */
export type Drill =
  | CallDrill
  | GapsDrill
  | CountDrill
  | ArriveDrill
  | StartDrill
  | SameDrill
  | ForksDrill
  | IntoDrill;

interface DrillBase extends DrillAsk {}

/** Hear or read some bars, answer them from memory, then tell the true notes from others. */
export interface CallDrill extends DrillBase {
  readonly kind: 'call';
  /** Written bars of the call: 1, 2, 4 or 8. */
  readonly bars: readonly number[];
  /** Those of them that are asked about, two at most. */
  readonly asked: readonly number[];
  /** Events of each choice in the order shown. */
  readonly choices: readonly (readonly number[])[];
  readonly right: number;
}

/** Notes left out. */
export interface GapsDrill extends DrillBase {
  readonly kind: 'gaps';
  readonly bars: readonly number[];
  /** Events shown, in order; those in `gaps` are left out. */
  readonly notes: readonly number[];
  readonly gaps: readonly number[];
  /** Hundredths of the notes shown that are left out, as near as whole notes allow. */
  readonly share: number;
  /** What may be filled in: one event for each pitch of the tune, lowest first. */
  readonly choices: readonly number[];
  /** For each gap, the index in `choices` of its pitch. */
  readonly right: readonly number[];
}

/** How a wrong count comes about. */
export type Miscount =
  | 'notes'
  | 'written-notes'
  | 'notes-less-slurs'
  | 'slurs-only'
  | 'one-more'
  | 'one-less'
  | 'two-more';

interface CountBase extends DrillBase {
  readonly kind: 'count';
  readonly bars: readonly number[];
  readonly notes: readonly number[];
  /** Which time through these bars it is: the first on which they are played one after another. */
  readonly pass: number;
  /** Strokes of these bars on that time, each as its events. */
  readonly strokes: readonly (readonly number[])[];
  /** The first of them. */
  readonly starts: Direction;
}

/** How many strokes; which notes are slurred; which way; which notes a stroke takes. */
export type CountDrill =
  | (CountBase & {
      readonly asks: 'strokes';
      readonly choices: readonly { readonly count: number; readonly from: Miscount | null }[];
      readonly right: number;
    })
  | (CountBase & {
      readonly asks: 'slurs';
      readonly choices: readonly (readonly number[])[];
      readonly right: number;
    })
  | (CountBase & {
      readonly asks: 'direction';
      /** Index in `strokes` of the stroke whose direction is asked. */
      readonly stroke: number;
      readonly choices: readonly Direction[];
      readonly right: number;
    })
  | (CountBase & {
      readonly asks: 'notes';
      readonly stroke: number;
      readonly choices: readonly (readonly number[])[];
      readonly right: number;
    });

/** A bowing that comes to the anchor the wrong way, to be mended by one change. */
export interface ArriveDrill extends DrillBase {
  readonly kind: 'arrive';
  readonly anchor: string;
  /** The anchor's first event, and the stroke it wants. */
  readonly first: number;
  readonly wanted: Direction;
  /** The time through that is shown. */
  readonly pass: number;
  /** Events on the way, up to the anchor; the first begins a stroke, on `start`. */
  readonly notes: readonly number[];
  readonly start: Direction;
  /** For each of `notes`: slurred to the one before it. */
  readonly joined: readonly boolean[];
  /** Events before which the bow may lift; the anchor's first may be one. */
  readonly lifts: readonly number[];
  /** What was changed in the tune's own bowing to turn it wrong; null where it arrives so itself. */
  readonly broken: Edit | null;
  /** Every single change in these notes that mends it within the limits of the level, best first. */
  readonly mends: readonly Edit[];
}

/** Start anywhere: which note, string, finger and stroke. */
export interface StartDrill extends DrillBase {
  readonly kind: 'start';
  readonly event: number;
  /** Choices of pitch, each an event that has it. */
  readonly notes: readonly number[];
  /** Choices of finger, each an event whose stop has it. */
  readonly fingers: readonly number[];
  readonly strings: readonly number[];
  readonly strokes: readonly Direction[];
  readonly right: {
    readonly note: number;
    readonly string: number;
    readonly finger: number;
    readonly stroke: number;
  };
  /** The stroke is another one on another time through; the first time is asked. */
  readonly varying: boolean;
}

/** Two phrases: the same, or different, and from which note. */
export interface SameDrill extends DrillBase {
  readonly kind: 'same';
  /** Phrase indices: the earlier, and the later that is compared with it. */
  readonly earlier: number;
  readonly later: number;
  /** Events of both, the pickup left out. */
  readonly earlierNotes: readonly number[];
  readonly laterNotes: readonly number[];
  /** Event of the later phrase at which they part; null where they are the same. */
  readonly parts: number | null;
  /** The notes are hidden, and only their places are shown. */
  readonly byHeart: boolean;
}

/** Which way it goes on this time. */
export interface ForksDrill extends DrillBase {
  readonly kind: 'forks';
  /** Phrase just played. */
  readonly after: number;
  /** How often this phrase has come by now, as written, from 1. */
  readonly time: number;
  /** Phrase indices, each of another label. */
  readonly choices: readonly number[];
  readonly right: number;
  /** The openings of the choices are shown. */
  readonly openings: boolean;
}

/** Into the anchor from farther and farther back. */
export interface IntoDrill extends DrillBase {
  readonly kind: 'into';
  readonly anchor: string;
  readonly first: number;
  readonly wanted: Direction;
  readonly pass: number;
  /** Whether the tune, as bowed, comes to it on that stroke. */
  readonly agrees: boolean;
  /** Nearest first. */
  readonly steps: readonly IntoStep[];
}

export interface IntoStep {
  /** Full bars before the bar that the anchor begins in: 1, 2, 4, 8. */
  readonly bars: number;
  /** Event on which to begin: the first there that begins a stroke. */
  readonly from: number;
  /** Events from there to the anchor. */
  readonly notes: readonly number[];
  /** Strokes up to the anchor, and how often the bow lifts on the way. */
  readonly strokes: number;
  readonly lifts: number;
  /** The stroke to begin on, so that the anchor comes on its own. */
  readonly start: Direction;
}

/** Why a tune cannot give a drill. */
export type NoDrill =
  | 'no-notes'
  | 'no-anchor'
  | 'anchor-not-reached'
  | 'no-way-there'
  | 'no-mend'
  | 'no-fork'
  | 'no-kin'
  | 'all-anchor'
  | 'too-plain';

/** A drill, or why there is none. */
export type MadeDrill =
  | { readonly drill: Drill; readonly why: null }
  | { readonly drill: null; readonly why: NoDrill };

/** What gets harder from level to level, in numbers; `words/` says it in sentences. */
export const drillLevels = {
  /** Bars of a call. */
  call: { beginner: [1], improver: [2], advanced: [4, 8] },
  /** Hundredths left out, and phrases at once. */
  gaps: { beginner: [10], improver: [25], advanced: [50, 75] },
  gapPhrases: { beginner: 1, improver: 1, advanced: 2 },
  /** Bars to count through. */
  count: { beginner: 1, improver: 2, advanced: 4 },
  /** Bars of the way that are shown, the last before the anchor. */
  arrive: { beginner: 2, improver: 4, advanced: 8 },
  /** Bars back, one after another. */
  into: { beginner: [1, 2], improver: [1, 2, 4], advanced: [1, 2, 4, 8] },
} as const satisfies Record<string, Readonly<Record<Level, number | readonly number[]>>>;
