import type { TuneType } from '../music/tune.ts';

/** Levels of players, lowest first. */
export const levels = ['beginner', 'improver', 'advanced'] as const;
/** For whom bowings are made. */
export type Level = (typeof levels)[number];

/** What a player of a level is asked for at most. */
export interface Limits {
  /** Most notes in one slur. */
  readonly longestSlur: number;
  /** Most seconds in one stroke, at the practice tempo. */
  readonly longestStroke: number;
}

/**
 * Which junctions a way of bowing slurs: as a book of 1883 does (`practice-1883.ts`); dotted pairs, or the
 * short note of each into the next long one; all within a bar; or in every stretch of a bar so long
 * (whole notes, as text) those from one onset to another: `{ every: '1/2', slurs: ['3/8-1/2'] }`.
 */
export type Pattern =
  | 'as-printed-1883'
  | 'dotted-pairs'
  | 'short-into-long'
  | 'whole-bar'
  | { readonly every: string; readonly slurs: readonly string[] };

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
  /** Most seconds in a stroke where it differs from the level's limit. */
  readonly longestStroke: number | null;
  /** What is slurred when the way is laid through a tune; null for single strokes. */
  readonly pattern: Pattern | null;
  /** Pickups in one stroke, or each note its own; null as the pattern has it. */
  readonly pickups: 'slurred' | 'separate' | null;
  /** The furthest that a slur may reach over when the way is laid: half a bar's edge, or the bar line. */
  readonly slurOver: 'nothing' | 'half-bar' | 'bar';
  /** Slurred dotted pairs are hooked: two notes parted within one stroke. */
  readonly hooks: boolean;
}

/** Beats a minute in learning, slow and at a session; the beat in whole notes as text: `1/2`. */
export interface PracticeTempo {
  readonly beat: string;
  readonly learning: number;
  readonly slow: number;
  readonly session: number;
}

/** How a book bows: its level, its ways and its limits. */
export interface BowingSettings {
  readonly level: Level;
  readonly limits: Readonly<Record<Level, Limits>>;
  readonly presets: Readonly<Record<string, Preset>>;
  readonly presetFor: Readonly<Partial<Record<TuneType, string>>>;
  readonly tempi: Readonly<Record<TuneType, PracticeTempo>>;
  /** Strokes start anew at each part. */
  readonly restart: 'part' | null;
}
