import type { BowingStudy, Direction } from '../bowing/bowing.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import type { Fingering, Tuning } from '../fingering/fingering.ts';
import type { Performance } from '../music/performance.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
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
}

/** The source of drills of a study and its request. */
export const drillSource = (
  study: Omit<DrillSource, 'settings' | 'start'>,
  request: { readonly bowing: BowingSettings; readonly start: Direction | null },
): DrillSource => ({ ...study, settings: request.bowing, start: request.start });

export const noteOf = ({ tune }: Pick<DrillSource, 'tune'>, event: number): NoteEvent | null => {
  const e = tune.events[event];
  return e?.kind === 'note' ? e : null;
};

/** Equal for notes of the same pitch or chord, and only for them. */
export function pitchText(source: DrillSource, event: number): string {
  const pitches = noteOf(source, event)?.pitches ?? [];
  const [only] = pitches;
  return only && pitches.length === 1 ? `${only.midi}` : pitches.map(p => p.midi).join('+');
}

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
  const height = (e: number): number => noteOf(source, e)?.pitches.at(-1)?.midi ?? 0;
  return [...first.values()].sort((a, b) => height(a) - height(b) || a - b);
}

const soundedIn = new WeakMap<Performance, ReadonlyMap<number, number>>();

/** Sounded note of the first time that each event is played, by event. Kept for each performance. */
export function firstSounded({ performance }: DrillSource): ReadonlyMap<number, number> {
  const known = soundedIn.get(performance);
  if (known) return known;
  const first = new Map<number, number>();
  performance.notes.forEach((n, k) => {
    if (!first.has(n.event)) first.set(n.event, k);
  });
  soundedIn.set(performance, first);
  return first;
}

/** Parts that a drill keeps to: the one of the anchor it is to be about, or all. */
export function partsFor(source: DrillSource, to: string | null): ReadonlySet<number> {
  const { tune, bowing } = source;
  const anchor = bowing.anchors.find(a => a.id === to);
  const part = anchor && tune.bars[tune.events[anchor.first]?.bar ?? -1]?.part;
  return new Set(part === undefined ? tune.parts.map((_, i) => i) : [part]);
}

/** Events of an anchor, whichever it is. */
export const isAnchored = ({ bowing }: DrillSource, event: number): boolean =>
  bowing.anchors.some(a => a.first <= event && event <= a.last);

/** The sounded notes of a phrase, the pickup into it left out. */
export function phraseNotes(source: DrillSource, phrase: Phrase): number[] {
  const { tune } = source;
  const full = phrase.bars.filter(b => tune.bars[b]?.pickup === false);
  return notesOfBars(source, full.length > 0 ? full : phrase.bars);
}

/** Events of bars at which a note begins to sound, or the first of them, though tied from before. */
export function notesOfBars(source: DrillSource, bars: readonly number[]): number[] {
  const sounded = firstSounded(source);
  const notes: number[] = [];
  for (const b of bars) {
    const { first = 0, end = 0 } = source.tune.bars[b] ?? {};
    for (let e = first; e < end; e++) {
      if (noteOf(source, e) && (notes.length === 0 || sounded.has(e))) notes.push(e);
    }
  }
  return notes;
}
