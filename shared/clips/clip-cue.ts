import type { Place } from '../problem.ts';

/** `A1/2=0:21`: where a bar begins in a recording, as the teacher wrote it. */
export interface ClipCue {
  /** `A1`, `A1/2`, or the name of a bar in an ending, `A8/2`. */
  readonly bar: string;
  /** The figure after the stroke, 1 without one: which time that bar of the part is played. */
  readonly pass: number;
  /** From the start of the recording. */
  readonly seconds: number;
  readonly place: Place;
}
