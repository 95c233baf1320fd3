import type { Anchor, Direction, LeadIn, SlurGroup } from '../bowing/bowing.ts';
import { noteAt } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import { notesByBar } from '../music/notes-by-bar.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Study } from '../study.ts';
import { type BowingLanguage, editClause, repeatSentence } from './bowing.ts';
import { barWords, notePlace } from './note-places.ts';
import { type SpokenLanguage, spokenPitches } from './spoken.ts';

/** The bowing of a tune told to a class: arrivals, lead-ins, repeats and other ways of a phrase. */
export interface PlanPhrases {
  /** `passes`: null where every time through arrives alike. */
  readonly arrival: (
    stroke: Direction,
    agrees: boolean,
    passes: readonly number[] | null,
  ) => string;
  readonly leadIn: (way: LeadInFacts) => string;
  readonly ways: (leadIn: LeadIn) => string;
  /** Said where only the best ways are shown. */
  readonly moreWays: (shown: number) => string;
  /** Said where only the first mends are listed. */
  readonly moreMends: (more: number) => string;
  readonly strokeCount: (strokes: number) => string;
  readonly drawnPlan: (passes: readonly number[] | null) => string;
  readonly allOfBar: (where: string) => string;
  readonly notesOfBar: (notes: readonly string[], where: string) => string;
  readonly varying: (places: readonly string[]) => string;
  /** Of a part that is played again; `repeat` is a sentence, `mend` a clause that mends it. */
  readonly repeatOf: (part: string, repeat: string, mend: string | null) => string;
  readonly slurs: (notes: readonly string[]) => string;
}

export interface LeadInFacts {
  /** null where every time through has this way there. */
  readonly passes: readonly number[] | null;
  readonly place: string;
  readonly start: Direction;
  readonly notes: number;
  readonly strokes: number;
  readonly arrives: Direction;
  readonly wanted: Direction;
}

/** Why a passage has no plan. */
export type NoPlan =
  | 'no-stroke-begins'
  | 'no-way-there'
  | 'beyond-level'
  | 'unlike-starts'
  | 'harms-next-time';

export interface PlanLanguage extends BowingLanguage, SpokenLanguage {
  readonly plans: PlanPhrases;
}

/** Why there is no way to show. */
export interface NoPlanLanguage {
  readonly noPlan: Readonly<Record<NoPlan, string>>;
}

/** "First and second time, as written, the bow arrives on an up-bow, as it should." */
export function arrivalSentences(
  { plans }: PlanLanguage,
  anchor: Anchor,
): readonly { readonly agrees: boolean; readonly sentence: string }[] {
  return arrivalKinds(anchor).map(({ direction, agrees, passes }) => ({
    agrees,
    sentence: plans.arrival(direction, agrees, passes),
  }));
}

/** The strokes on which the bow arrives, each with its times through; null where there is one for all. */
export function arrivalKinds({ arrivals, direction }: Anchor): readonly {
  readonly direction: Direction;
  readonly agrees: boolean;
  readonly passes: readonly number[] | null;
}[] {
  const kinds = [...new Set(arrivals.map(a => a.direction))];
  return kinds.map(kind => ({
    direction: kind,
    agrees: kind === direction,
    passes: kinds.length === 1 ? null : arrivals.filter(a => a.direction === kind).map(a => a.pass),
  }));
}

/** Where the lead-in starts, its strokes, and how many ways there are: exact counts. */
export function leadInSentences(
  language: PlanLanguage,
  { tune }: Study,
  anchor: Anchor,
  leadIn: LeadIn,
  names: NoteNames,
): readonly string[] {
  const { notes, start, strokes } = leadIn;
  if (notes.length === 0) return [];
  const facts: LeadInFacts = {
    passes: anchor.leadIns.length > 1 ? leadIn.passes : null,
    place: namedNote(language, tune, at(notes, 0), names),
    start,
    notes: notes.length,
    strokes,
    // Strokes alternate, so an even number of them ends where it began.
    arrives: (start === 'down') === (strokes % 2 === 0) ? 'down' : 'up',
    wanted: anchor.direction,
  };
  return [language.plans.leadIn(facts), language.plans.ways(leadIn)];
}

/** That only the best ways are shown; null where these are all that arrive within the level. */
export const moreWays = (
  { plans }: PlanLanguage,
  { allowedArriving }: LeadIn,
  shown: number,
): string | null => (shown > 0 && allowedArriving > BigInt(shown) ? plans.moreWays(shown) : null);

/** How many mends are not listed; null where all are. */
export const moreMends = ({ plans }: PlanLanguage, more: number): string | null =>
  more > 0 ? plans.moreMends(more) : null;

/** "That makes 44 strokes." */
export const strokeCount = ({ plans }: PlanLanguage, strokes: number): string =>
  plans.strokeCount(strokes);

/** Why there is no way to show; null where there is one. */
export function noPlanSentence({ noPlan }: NoPlanLanguage, anchor: Anchor): string | null {
  const why = whyNoPlan(anchor);
  return why && noPlan[why];
}

function whyNoPlan({ arrivals, leadIns }: Anchor): NoPlan | null {
  if (leadIns.some(l => l.plans.length > 0)) return null;
  if (arrivals.length === 0) return 'no-stroke-begins';
  if (leadIns.length === 0) return 'no-way-there';
  if (leadIns.every(l => l.allowedArriving === 0n)) return 'beyond-level';
  const sameNotes = new Set(leadIns.map(l => l.notes.join(' '))).size < leadIns.length;
  return sameNotes ? 'unlike-starts' : 'harms-next-time';
}

/** Which way is drawn: "First time: the first of these ways, in notes". */
export const drawnPlanTitle = ({ plans }: PlanLanguage, leadIn: LeadIn, several: boolean): string =>
  plans.drawnPlan(several ? leadIn.passes : null);

/** Where notes are played down one time and up another: which, and how the notation flags them. */
export function varyingSentences(
  language: PlanLanguage,
  { tune, bowing }: Study,
): readonly string[] {
  const bars = new Map<string, string[]>();
  for (const event of bowing.varying) {
    const { bar, note } = notePlace(noteAt(tune, event));
    bars.set(bar, [...(bars.get(bar) ?? []), note]);
  }
  if (bars.size === 0) return [];
  const written = notesByBar(tune);
  const places = [...bars].map(([bar, notes]) => {
    const where = barWords(language, bar);
    const whole = notes.length > 2 && notes.length === written.get(bar);
    return whole ? language.plans.allOfBar(where) : language.plans.notesOfBar(notes, where);
  });
  return [language.plans.varying(places)];
}

/** For each part that is played again: whether it starts on the same stroke, and what mends it. */
export function repeatSentences(
  language: PlanLanguage,
  { tune, bowing }: Study,
): readonly string[] {
  return bowing.repeats
    .filter(repeat => repeat.secondPass !== null)
    .map(repeat => {
      const mend = repeat.secondPass === 'reversed' ? repeat.mends[0] : undefined;
      return language.plans.repeatOf(
        at(tune.parts, repeat.part).name,
        repeatSentence(language, repeat),
        mend ? editClause(language, tune, mend) : null,
      );
    });
}

/** One of several bowings of a phrase: "slur notes 1 and 2 of A1 (D, E); slur …", "no slurs". */
export const bowingWords = (
  language: PlanLanguage,
  tune: Tune,
  slurs: readonly SlurGroup[],
  names: NoteNames,
): string => language.plans.slurs(slurs.map(group => namedNotes(language, tune, group, names)));

/** "notes 2 and 3 of B5 (F sharp, E)"; "note 8 of B5 to note 1 of B6 (D, G)" over a bar line. */
function namedNotes(
  language: PlanLanguage,
  tune: Tune,
  group: SlurGroup,
  names: NoteNames,
): string {
  const { places } = language;
  const notes = group.map(event => noteAt(tune, event));
  const [first, last] = [notePlace(at(notes, 0)), notePlace(at(notes, notes.length - 1))];
  const where = barWords(language, first.bar);
  const place =
    first.bar === last.bar
      ? places.notes(first.note, last.note, notes.length === 2, where)
      : places.across(
          places.note(first.note, where),
          places.note(last.note, barWords(language, last.bar)),
        );
  return places.named(
    place,
    notes.map(note => spokenPitches(language, note.pitches, names)),
  );
}

/** "note 3 of B5 (F sharp)". */
export function namedNote(
  language: PlanLanguage,
  tune: Tune,
  event: number,
  names: NoteNames,
): string {
  const note = noteAt(tune, event);
  const place = notePlace(note);
  return language.places.named(language.places.note(place.note, barWords(language, place.bar)), [
    spokenPitches(language, note.pitches, names),
  ]);
}
