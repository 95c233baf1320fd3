import type { TuneType } from '../music/tune.ts';

/** Levels of players, lowest first. */
export const levels = ['beginner', 'improver', 'advanced'] as const;
/** One level of players. */
export type Level = (typeof levels)[number];

/** Limits of a level. */
export interface Limits {
  /** Most notes in one slur. */
  readonly longestSlur: number;
  /** Most seconds in one stroke, at the practice tempo. */
  readonly longestStroke: number;
}

/**
 * Which junctions a way of bowing slurs: as a book of 1883 does (`practice-1883.ts`); dotted pairs, or the
 * short note of each into the next long one; all in a bar; or, in each division of the bar of length `every`,
 * those between two onsets: `{ every: '1/2', slurs: ['3/8-1/2'] }`, in whole notes as text.
 */
export type Pattern =
  | 'as-printed-1883'
  | 'dotted-pairs'
  | 'short-into-long'
  | 'whole-bar'
  | { readonly every: string; readonly slurs: readonly string[] };

/** A way of bowing. `bowbook.yaml` can change each and add others. */
export interface Preset {
  readonly name: string;
  /** Stroke preferred on strong beats; null for either. */
  readonly strongBeat: 'down' | 'up' | null;
  /** Whether slurs should lead into beats rather than start on them. */
  readonly intoBeat: boolean;
  /** Whether the stroke must change at the end of a phrase. */
  readonly phraseEndsChange: boolean;
  /** Most notes in a slur; null for the limit of the level. */
  readonly longestSlur: number | null;
  /** Most seconds in a stroke; null for the limit of the level. */
  readonly longestStroke: number | null;
  /** What a proposed bowing slurs; null for single strokes. */
  readonly pattern: Pattern | null;
  /** Whether the notes of a pickup share a stroke; null where the pattern decides. */
  readonly pickups: 'slurred' | 'separate' | null;
  /** What a slur of a proposed bowing may cross at most: nothing, the middle of the bar, or the bar line. */
  readonly slurOver: 'nothing' | 'half-bar' | 'bar';
  /** Whether slurred dotted pairs are hooked: two notes in one stroke, separated. */
  readonly hooks: boolean;
}

/** Tempi in beats a minute for learning, slow practice and a session. The beat is in whole notes, as text: `1/2`. */
export interface PracticeTempo {
  readonly beat: string;
  readonly learning: number;
  readonly slow: number;
  readonly session: number;
}

/** Settings of bowing of a book. */
export interface BowingSettings {
  readonly level: Level;
  readonly limits: Readonly<Record<Level, Limits>>;
  readonly presets: Readonly<Record<string, Preset>>;
  readonly presetFor: Readonly<Partial<Record<TuneType, string>>>;
  readonly tempi: Readonly<Record<TuneType, PracticeTempo>>;
  /** `part` where the alternation of strokes starts again at each part. */
  readonly restart: 'part' | null;
}
