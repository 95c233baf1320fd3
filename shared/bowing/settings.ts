import type { TuneType } from '../music/tune.ts';

export const levels = ['beginner', 'improver', 'advanced'] as const;
export type Level = (typeof levels)[number];

export interface Limits {
  /** Most notes in one slur. */
  readonly longestSlur: number;
  /** Most seconds in one stroke, at the practice tempo. */
  readonly longestStroke: number;
}

/** What a way of bowing prefers. A starting point, editable in `bowbook.yaml`. */
export interface Preset {
  readonly name: string;
  /** Stroke wanted on strong beats; null where the preset does not care. */
  readonly strongBeat: 'down' | 'up' | null;
  /** Slurs are wanted to lead into beats rather than to start on them. */
  readonly intoBeat: boolean;
  /** No slur may cross the end of a phrase. */
  readonly phraseEndsChange: boolean;
  /** Most notes in a slur where it differs from the level's limit. */
  readonly longestSlur: number | null;
}

/** Beats a minute in learning, slow and at a session; the beat in whole notes as text: `1/2`. */
export interface PracticeTempo {
  readonly beat: string;
  readonly learning: number;
  readonly slow: number;
  readonly session: number;
}

export interface BowingSettings {
  readonly level: Level;
  readonly limits: Readonly<Record<Level, Limits>>;
  readonly presets: Readonly<Record<string, Preset>>;
  readonly presetFor: Readonly<Partial<Record<TuneType, string>>>;
  readonly tempi: Readonly<Record<TuneType, PracticeTempo>>;
  /** Strokes start anew at each part. */
  readonly restart: 'part' | null;
}
