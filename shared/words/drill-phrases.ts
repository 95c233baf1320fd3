import type { Level } from '../bowing/settings.ts';
import type { DrillKind, Miscount } from '../drills/drill.ts';
import type { Direction } from '../music/tune.ts';
import type { EditLanguage } from './bowing.ts';
import type { MapLanguage } from './map.ts';

/** Bars by the names of the first and the last, which are one where it is one bar. */
export interface BarSpan {
  readonly from: string;
  readonly to: string;
}

/** Bars on one time through; null for the first, or where there is only one. */
export interface BarsPlayed extends BarSpan {
  readonly pass: number | null;
}

/** What drills are told with, by kind. A `place` is worded already: "note 3 of A6". */
export interface DrillPhrases {
  /** Notes on a string of beads, said one by one. */
  readonly beads: {
    readonly nth: (n: number) => string;
    readonly leftOut: string;
    readonly slurredOn: string;
    readonly bow: Readonly<Record<Direction, string>>;
  };
  readonly call: {
    readonly question: (bars: BarSpan) => string;
    readonly ask: (bars: BarSpan) => string;
    readonly choice: (n: number) => string;
    readonly notesOf: (bars: BarSpan) => string;
    readonly swapped: (n: number, next: number) => string;
    readonly why: (bars: BarSpan, letters: string) => string;
  };
  readonly gaps: {
    readonly question: (bars: BarSpan, gaps: number, notes: number) => string;
    readonly why: string;
  };
  readonly start: {
    /** `phrase`: the label of one that begins there. `varying`: of the first time through alone. */
    readonly question: (place: string, phrase: string | null, varying: boolean) => string;
    readonly asks: Readonly<Record<'note' | 'string' | 'finger', AskPhrases<string>>> & {
      readonly stroke: AskPhrases<{ readonly stroke: Direction; readonly varying: boolean }>;
    };
    readonly answer: (note: string, stroke: Direction, varying: boolean) => string;
    /** Why: the stroke on which its bar is reached, and the strokes in the bar before it. */
    readonly why: (reached: Direction, before: number, stroke: Direction) => string;
  };
  readonly count: {
    readonly begins: (bars: BarsPlayed, starts: Direction) => string;
    readonly strokes: {
      readonly question: (bars: BarsPlayed) => string;
      readonly ask: string;
      readonly answer: (strokes: number) => string;
      /** `joined`: notes that go on in the stroke before. */
      readonly why: (notes: number, joined: number) => string;
    };
    readonly slurs: {
      readonly question: (bars: BarsPlayed) => string;
      readonly ask: string;
      readonly not: string;
      readonly why: (notes: string) => string;
    };
    readonly direction: {
      readonly ask: (place: string) => string;
      readonly not: string;
      readonly answer: (stroke: Direction) => string;
      readonly why: (nth: number, starts: Direction) => string;
    };
    readonly notes: {
      readonly ask: (nth: number) => string;
      readonly not: string;
      readonly why: (nth: number, notes: string) => string;
    };
    /** Why a wrong count is wrong. */
    readonly miscounts: Readonly<Record<Miscount, string>>;
  };
  readonly arrive: {
    readonly question: (place: string, wanted: Direction, pass: number | null) => string;
    readonly broken: string;
    readonly asBowed: string;
    readonly change: string;
    readonly changeOrLift: string;
    readonly wayThere: (bars: BarSpan) => string;
    readonly moreMends: (n: number) => string;
    readonly why: string;
  };
  readonly into: {
    readonly question: (place: string, wanted: Direction) => string;
    readonly comesTurned: (pass: number | null) => string;
    readonly ask: (bars: number, place: string) => string;
    readonly not: (stroke: Direction) => string;
    readonly itemWhy: (strokes: number, lifts: number, stroke: Direction) => string;
    readonly answer: (bars: number, start: Direction, strokes: number) => string;
    readonly why: string;
  };
  readonly same: {
    readonly question: (earlier: string, later: string) => string;
    readonly byHeart: string;
    readonly byNotes: string;
    readonly ask: (later: string) => string;
    readonly sameThroughout: string;
    readonly not: Readonly<Record<'parts' | 'alike' | 'still-alike' | 'parted', string>>;
    readonly answerSame: string;
    readonly answerParts: (place: string) => string;
  };
  readonly forks: {
    readonly question: (label: string, bars: string, time: number) => string;
    readonly ask: string;
    readonly choice: (label: string, opening: string | null) => string;
    readonly follows: (label: string, after: string) => string;
    readonly neverFollows: (label: string, here: string) => string;
    readonly answer: (label: string, bars: string) => string;
  };
}

export interface AskPhrases<Answer> {
  readonly ask: string;
  readonly why: (answer: Answer) => string;
  readonly not: string;
}

export interface DrillLanguage extends EditLanguage, MapLanguage {
  readonly drillTitles: Readonly<Record<DrillKind, string>>;
  readonly levelSays: Readonly<Record<DrillKind, Readonly<Record<Level, string>>>>;
  readonly drills: DrillPhrases;
}
