import type { Fraction } from './fraction.ts';

/**
 * A tune as played: repeats, endings and `P:` unrolled, ties merged. Indices of bars and events
 * are into the `Tune`; indices of notes into `notes` here, in played order.
 */
export interface Performance {
  readonly bars: readonly PlayedBar[];
  readonly notes: readonly SoundedNote[];
  readonly length: Fraction;
}

export interface PlayedBar {
  readonly bar: number;
  /** Which time this written bar is being played, from 1. */
  readonly pass: number;
  readonly onset: Fraction;
  /** Sounded notes that begin in it: first (included) to end (not included). */
  readonly first: number;
  readonly end: number;
}

/** A note or chord after ties are merged: what the bow plays. */
export interface SoundedNote {
  /** Event index of the written note it begins with. */
  readonly event: number;
  /** Event indices of the written notes tied on to it. */
  readonly tied: readonly number[];
  /** Which time that written note is being played, from 1. */
  readonly pass: number;
  /** Index in `bars`. */
  readonly barPlayed: number;
  /** From the start of the tune. */
  readonly onset: Fraction;
  readonly duration: Fraction;
  /** A rest, or a `!breath!` on the note before, stands between it and the note before. */
  readonly afterGap: boolean;
}
