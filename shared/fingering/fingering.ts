import type { Pitch } from '../music/pitch.ts';

/** Open strings from string 1, the highest: a fiddle's are E5 A4 D4 G3. */
export type Tuning = readonly [Pitch, Pitch, Pitch, Pitch];

/** Where a pitch is stopped. */
export interface Stop {
  /** 1 is the highest string. */
  readonly string: number;
  /** 0 is open; 1 to 4. */
  readonly finger: number;
  /** Semitones above the open string. */
  readonly semitones: number;
  /** The fourth finger reaches past its usual place. */
  readonly stretched: boolean;
}

/**
 * Stops of each written event, in the order of its `pitches`; empty for rests, null for a pitch
 * that first position does not reach.
 */
export type Fingering = readonly (readonly (Stop | null)[])[];
