import { noteAt } from '../music/note-at.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/** Where notes stand, by bar and number. `where` is a bar as `inBar` or `inPickup` words it. */
export interface PlacePhrases {
  /** Of a bar after a note: "of B5". */
  readonly inBar: (bar: string) => string;
  readonly inPickup: (bar: string) => string;
  readonly note: (note: string, where: string) => string;
  /** Notes of one bar; `pair` where the last is the next after the first. */
  readonly notes: (first: string, last: string, pair: boolean, where: string) => string;
  /** Notes over a bar line, both with their bars. */
  readonly across: (first: string, last: string) => string;
  /** "note 3 of B5 (F sharp)": a place, and the names of its notes. */
  readonly named: (place: string, names: readonly string[]) => string;
}

export interface PlaceLanguage {
  readonly places: PlacePhrases;
}

/** A written note by the bar that it stands in, "B5", and its number there, "3". */
export interface NotePlace {
  readonly bar: string;
  readonly note: string;
}

export function notePlace({ id }: Pick<NoteEvent, 'id'>): NotePlace {
  const [bar, note] = id.split(':');
  return { bar: bar ?? '', note: note ?? '' };
}

/** "note 3 of B5", of an event. */
export const noteWords = ({ places }: PlaceLanguage, tune: Tune, event: number): string =>
  noteIn(places, notePlace(noteAt(tune, event)));

/** "notes 2 and 3 of B5", "notes 2 to 4 of B5", "note 8 of B5 to note 1 of B6", of events. */
export const spanWords = (language: PlaceLanguage, tune: Tune, events: readonly number[]): string =>
  spanOf(
    language,
    notePlace(noteAt(tune, at(events, 0))),
    notePlace(noteAt(tune, at(events, events.length - 1))),
  );

/** The same from one place to another; "note 3 of B5" where both are one. */
export function spanOf({ places }: PlaceLanguage, first: NotePlace, last: NotePlace): string {
  if (first.bar !== last.bar) return places.across(noteIn(places, first), noteIn(places, last));
  if (first.note === last.note) return noteIn(places, first);
  const pair = Number(last.note) - Number(first.note) === 1;
  return places.notes(first.note, last.note, pair, places.inBar(first.bar));
}

const noteIn = (places: PlacePhrases, { bar, note }: NotePlace): string =>
  places.note(note, places.inBar(bar));

/** "of B5"; of `B0`, "of the pickup B0". */
export const barWords = ({ places }: PlaceLanguage, bar: string): string =>
  /^.*\D0(?:\/.*)?$/.test(bar) ? places.inPickup(bar) : places.inBar(bar);
