import type { Anchor, Direction } from '../bowing/bowing.ts';
import type { SlurFault } from '../bowing/lead-in-of.ts';
import type { Level } from '../bowing/settings.ts';
import { noteAt } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { PastLimit } from '../trying/past-limits.ts';
import { noteWords, type PlaceLanguage, spanWords } from './note-places.ts';
import { arrivalKinds } from './plans.ts';
import { type SpokenLanguage, spokenPitches } from './spoken.ts';
import { capital } from './text.ts';

/** What is said where a student tries strokes. A `place` is worded already: "note 3 of B5". */
export interface TryPhrases {
  /** `passes`: null where every time through arrives alike. */
  readonly arrival: (
    stroke: Direction,
    wanted: Direction,
    passes: readonly number[] | null,
  ) => string;
  readonly strokes: (notes: number, strokes: number, start: Direction) => string;
  /** Two notes beside each other, and where they are. */
  readonly pair: (first: string, second: string, place: string) => string;
  readonly turned: (pairs: readonly string[], slurred: boolean) => string;
  readonly link: (pair: string) => string;
  /** `nth` of `of` in its stroke. */
  readonly stroke: (direction: Direction, nth: number, of: number) => string;
  readonly noneTurnRound: string;
  readonly turnRound: (runs: readonly string[]) => string;
  /** Of notes whose stroke turned: from one note on, or from one to another. */
  readonly from: (note: string) => string;
  readonly fromTo: (first: string, last: string) => string;
  /** What goes past a limit, after its place. */
  readonly manyNotes: (notes: number, most: number, level: Level) => string;
  readonly longStroke: (seconds: number) => string;
  readonly slurOver: Readonly<Record<SlurFault, string>>;
}

export interface TryLanguage extends PlaceLanguage, SpokenLanguage {
  readonly trying: TryPhrases;
}

/** "The bow arrives on an up-bow, as it should." One sentence for all times, or one for each kind. */
export function arrivals(
  { trying }: Pick<TryLanguage, 'trying'>,
  anchor: Anchor,
): readonly {
  readonly agrees: boolean;
  readonly direction: Direction;
  readonly sentence: string;
}[] {
  return arrivalKinds(anchor).map(({ agrees, direction, passes }) => ({
    agrees,
    direction,
    sentence: trying.arrival(direction, anchor.direction, passes),
  }));
}

/** "23 notes in 20 strokes, starting on a down-bow." */
export const strokesTold = (
  { trying }: Pick<TryLanguage, 'trying'>,
  notes: number,
  strokes: number,
  start: Direction,
): string => trying.strokes(notes, strokes, start);

/** "Slurred: F sharp to E, notes 7 and 8 of B5." Several: one for each place. */
export const junctionTurned = (
  language: TryLanguage,
  tune: Tune,
  places: readonly { readonly before: number; readonly event: number }[],
  slurred: boolean,
  names: NoteNames,
): string =>
  language.trying.turned(
    places.map(p => pairWords(language, tune, p.before, p.event, names)),
    slurred,
  );

/** Name of a link between two notes, whatever its state. */
export const junctionName = (
  language: TryLanguage,
  tune: Tune,
  before: number,
  event: number,
  names: NoteNames,
): string => language.trying.link(pairWords(language, tune, before, event, names));

const pairWords = (
  language: TryLanguage,
  tune: Tune,
  before: number,
  event: number,
  names: NoteNames,
): string =>
  language.trying.pair(
    nameOf(language, noteAt(tune, before), names),
    nameOf(language, noteAt(tune, event), names),
    spanWords(language, tune, [before, event]),
  );

/** "F sharp, high 2 on D, down-bow, second of 3 in its stroke, note 7 of B5". */
export const noteTold = (
  language: TryLanguage,
  tune: Tune,
  event: number,
  where: string,
  stroke: { readonly direction: Direction; readonly nth: number; readonly of: number },
  names: NoteNames,
): string =>
  [
    nameOf(language, noteAt(tune, event), names),
    where,
    language.trying.stroke(stroke.direction, stroke.nth, stroke.of),
    noteWords(language, tune, event),
  ].join(', ');

/** Runs of notes on the way whose stroke an edit turned; each run by its first and last event. */
export function turnedTold(
  language: TryLanguage,
  tune: Tune,
  runs: readonly (readonly [number, number])[],
  last: number,
  names: NoteNames,
): string {
  const { trying, places } = language;
  if (runs.length === 0) return trying.noneTurnRound;
  const named = (event: number): string =>
    places.named(noteWords(language, tune, event), [nameOf(language, noteAt(tune, event), names)]);
  const told = runs.map(([from, to]) => {
    if (to === last) return trying.from(named(from));
    return from === to ? named(from) : trying.fromTo(named(from), named(to));
  });
  return trying.turnRound(told);
}

/** What goes past the limits of a level, or of the way of bowing, in a sentence. */
export function pastLimitTold(
  language: TryLanguage,
  tune: Tune,
  limit: PastLimit,
  level: Level,
): string {
  const where = spanWords(language, tune, [
    at(limit.events, 0),
    at(limit.events, limit.events.length - 1),
  ]);
  return `${capital(where)}: ${pastLimit(language.trying, limit, level)}.`;
}

function pastLimit(trying: TryPhrases, limit: PastLimit, level: Level): string {
  switch (limit.kind) {
    case 'many-notes':
      return trying.manyNotes(limit.events.length, limit.most, level);
    case 'long-stroke':
      return trying.longStroke(limit.seconds);
    case 'slur-over':
      return trying.slurOver[limit.fault];
  }
}

const nameOf = (language: TryLanguage, note: NoteEvent, names: NoteNames): string =>
  spokenPitches(language, note.pitches, names);
