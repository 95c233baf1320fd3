import type { Direction } from '../music/tune.ts';

/**
 * A passage as it sounds, once round: everything in seconds from its start. What renders it knows
 * nothing of notation.
 */
export interface SoundingPassage {
  /** Once round, with the breath or the answer after it: the loop's length. */
  readonly length: number;
  readonly strokes: readonly SoundingStroke[];
  readonly ticks: readonly Tick[];
  /** What sounds when, to be followed in the notation: indices into `performance.notes`. */
  readonly notes: readonly FollowedNote[];
}

/** One movement of the bow. Its tones follow one another without a gap, the first at `from`. */
export interface SoundingStroke {
  readonly direction: Direction;
  readonly from: number;
  readonly until: number;
  /** The bow stays on the string into the next stroke. */
  readonly runsOn: boolean;
  readonly tones: readonly Tone[];
}

export interface Tone {
  readonly at: number;
  /** MIDI note numbers, one or two. */
  readonly pitches: readonly number[];
  /** Decibels above the plain loudness. */
  readonly accent: number;
  /** The bow stops and starts again in its direction, as in hooks; else the pitch glides. */
  readonly stopped: boolean;
}

/** A beat that is counted aloud. */
export interface Tick {
  readonly at: number;
  readonly strong: boolean;
}

export interface FollowedNote {
  readonly note: number;
  readonly at: number;
  readonly until: number;
  /** Index into `bowing.plan.strokes`. */
  readonly stroke: number;
}

/** Hertz of a MIDI note number: equal temperament on A4 = 440 Hz (ISO 16). */
export const hertz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
