import type { BowingStudy, Direction } from '../bowing/bowing.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import type { Fingering, Tuning } from '../fingering/fingering.ts';
import { noteAt, topPitch } from '../music/note-at.ts';
import type { Performance } from '../music/performance.ts';
import type { Bar, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Phrase, SectionMap } from '../sections/section-map.ts';

/** What drills are made from: a tune as studied, and what its bowing was asked for. */
export interface DrillSource {
  readonly tune: Tune;
  readonly tuning: Tuning;
  readonly performance: Performance;
  readonly fingering: Fingering;
  readonly map: SectionMap;
  readonly bowing: BowingStudy;
  readonly settings: BowingSettings;
  /** The first stroke, where the teacher says it. */
  readonly start: Direction | null;
  /**
   * By event, the sounded note of the first time that it is played. An event tied on to another
   * begins no sounded note, and has none; neither has one that is never played.
   */
  readonly firstSounded: ReadonlyMap<number, number>;
}

/** The source of drills of a study and its request. */
export function drillSource(
  study: Omit<DrillSource, 'settings' | 'start' | 'firstSounded'>,
  request: { readonly bowing: BowingSettings; readonly start: Direction | null },
): DrillSource {
  const firstSounded = new Map<number, number>();
  study.performance.notes.forEach((n, k) => {
    if (!firstSounded.has(n.event)) firstSounded.set(n.event, k);
  });
  return { ...study, settings: request.bowing, start: request.start, firstSounded };
}

/** A text that is equal for notes of the same pitch or chord, and only for them. `event` is a note. */
export const pitchText = ({ tune }: DrillSource, event: number): string =>
  noteAt(tune, event)
    .pitches.map(p => p.midi)
    .join('+');

/** The pitches of notes in order, as one text. */
export const pitchesText = (source: DrillSource, events: readonly number[]): string =>
  events.map(e => pitchText(source, e)).join(' ');

/** One event for each pitch or chord that the given notes have, lowest first. */
export function gamutOf(source: DrillSource, events: readonly number[]): number[] {
  const first = new Map<string, number>();
  for (const e of events) {
    const text = pitchText(source, e);
    if (!first.has(text)) first.set(text, e);
  }
  const height = (e: number): number => topPitch(noteAt(source.tune, e)).midi;
  return [...first.values()].sort((a, b) => height(a) - height(b) || a - b);
}

/** Parts that a drill keeps to: the one of the anchor it is to be about, or all. */
export function partsFor(source: DrillSource, to: string | null): ReadonlySet<number> {
  const { tune, bowing } = source;
  const anchor = bowing.anchors.find(a => a.id === to);
  return new Set(anchor ? [partOf(tune, anchor.first)] : tune.parts.keys());
}

/** Index of the part that an event stands in. */
export const partOf = (tune: Tune, event: number): number =>
  at(tune.bars, at(tune.events, event).bar).part;

/** The first of some bars that is no pickup; null where all are. */
export const firstFullBar = (tune: Tune, bars: readonly number[]): Bar | null =>
  bars.map(b => at(tune.bars, b)).find(b => !b.pickup) ?? null;

/** Whether an event belongs to an anchor, whichever it is. */
export const isAnchored = ({ bowing }: DrillSource, event: number): boolean =>
  bowing.anchors.some(a => a.first <= event && event <= a.last);

/** The sounded notes of a phrase as events, the pickup into it left out. */
export function phraseNotes(source: DrillSource, phrase: Phrase): number[] {
  const { tune } = source;
  const full = phrase.bars.filter(b => !at(tune.bars, b).pickup);
  return notesOfBars(source, full.length > 0 ? full : phrase.bars);
}

/** Events of bars at which a note begins to sound, or the first of them, though tied from before. */
export function notesOfBars(source: DrillSource, bars: readonly number[]): number[] {
  const { tune, firstSounded } = source;
  const notes: number[] = [];
  for (const b of bars) {
    const { first, end } = at(tune.bars, b);
    for (let e = first; e < end; e++) {
      const isNote = at(tune.events, e).kind === 'note';
      if (isNote && (notes.length === 0 || firstSounded.has(e))) notes.push(e);
    }
  }
  return notes;
}
