import type {
  Demand,
  Edit,
  Plan,
  Reason,
  RepeatStudy,
  Retake,
  WholeTune,
} from '../bowing/bowing.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { noteWords, type PlaceLanguage, spanWords } from './note-places.ts';
import { capital } from './text.ts';

/** What is said of a bowing: changes to its slurs, plans, repeats, the whole tune. */
export interface BowingPhrases {
  readonly asWritten: string;
  /** How a plan arrives, and what else speaks for it: clauses. Reasons without one are not said. */
  readonly arrives: Readonly<Partial<Record<Reason, string>>>;
  readonly besides: Readonly<Partial<Record<Reason, string>>>;
  /** A sentence; the first of `changes` is its beginning. */
  readonly plan: (said: {
    readonly changes: readonly string[];
    readonly arrives: readonly string[];
    readonly besides: readonly string[];
  }) => string;
  /** The tune's own way of bowing, and the edits by which it is bent to arrive. */
  readonly ownWay: (bends: readonly string[]) => string;
  /** Single strokes but for slurs over these notes. */
  readonly singleStrokes: (slurs: readonly string[]) => string;
  /** Strokes in a part: played once, alike each time, or not. Clauses that begin a sentence. */
  readonly onceThrough: (strokes: number) => string;
  readonly eachTime: (strokes: number) => string;
  readonly unlikeTimes: (strokes: readonly number[]) => string;
  /** How the second time starts, after one of these: ", and the second …". */
  readonly secondTime: Readonly<Record<'same' | 'reversed', string>>;
  readonly whole: {
    readonly nothing: string;
    readonly solved: (edits: readonly string[]) => string;
    readonly contradiction: (demands: readonly string[]) => string;
  } & Readonly<Record<Exclude<WholeTune['kind'], 'solved' | 'contradiction'>, string>>;
  readonly demands: {
    readonly anchor: (id: string, pass: number) => string;
    readonly sign: (note: string, pass: number) => string;
    readonly repeat: (part: string) => string;
    readonly opening: string;
  };
}

/** Clauses, as they stand within a sentence. Notes are worded already: "notes 2 and 3 of B5". */
export interface EditPhrases {
  readonly slur: (notes: string) => string;
  readonly drop: (notes: string) => string;
  readonly lengthen: (from: string, to: string) => string;
  readonly shorten: (from: string, to: string) => string;
  readonly split: (from: string, to: readonly string[]) => string;
  readonly merge: (from: readonly string[]) => string;
  readonly retake: (lift: LiftWords) => string;
}

/** A lift, its notes named. */
export interface LiftWords {
  readonly note: string;
  readonly direction: Direction;
  /** The note after which a breath is to be written; null for none. */
  readonly after: string | null;
  /** The first note, and the stroke that it is to have as a sign; null for none. */
  readonly opening: { readonly note: string; readonly direction: Direction } | null;
}

export interface EditLanguage extends PlaceLanguage {
  readonly edits: EditPhrases;
}

export interface BowingLanguage extends EditLanguage {
  readonly bowing: BowingPhrases;
}

/** "Slur notes 2 to 3 of B5." One sentence for an edit, naming its notes and bars. */
export const editSentence = (language: EditLanguage, tune: Tune, edit: Edit): string =>
  `${capital(editClause(language, tune, edit))}.`;

/** The same within a sentence: "slur notes 2 to 3 of B5". */
export function editClause(language: EditLanguage, tune: Tune, edit: Edit): string {
  const { edits } = language;
  const span = (events: readonly number[]): string => spanWords(language, tune, events);
  switch (edit.kind) {
    case 'slur':
    case 'drop':
      return edits[edit.kind](span(edit.notes));
    case 'lengthen':
    case 'shorten':
      return edits[edit.kind](span(edit.from), span(edit.to));
    case 'split':
      return edits.split(span(edit.from), edit.to.map(span));
    case 'merge':
      return edits.merge(edit.from.map(span));
    case 'retake':
      return edits.retake(liftWords(language, tune, edit));
  }
}

function liftWords(language: EditLanguage, tune: Tune, edit: Retake): LiftWords {
  const note = (event: number): string => noteWords(language, tune, event);
  const { after, before, direction, opening } = edit;
  return {
    note: note(before),
    direction,
    after: after === null ? null : note(after),
    opening: opening && { note: note(opening.event), direction: opening.direction },
  };
}

/** One plain sentence for a plan: the way it is bowed in, or what it changes, and why it arrives. */
export function planSentence(language: BowingLanguage, tune: Tune, plan: Plan): string {
  const { bowing } = language;
  if (plan.changes.length === 0) return bowing.asWritten;
  if (plan.because.includes('own-way')) {
    return bowing.ownWay(plan.bends.map(edit => editClause(language, tune, edit)));
  }
  if (plan.because.includes('single-strokes')) {
    return bowing.singleStrokes(plan.slurs.map(slur => spanWords(language, tune, slur)));
  }
  const changes = plan.changes.map((edit, i) => {
    const clause = editClause(language, tune, edit);
    return i === 0 ? capital(clause) : clause;
  });
  return bowing.plan({
    changes,
    arrives: plan.because.flatMap(reason => bowing.arrives[reason] ?? []),
    besides: plan.because.flatMap(reason => bowing.besides[reason] ?? []),
  });
}

/** "Each time through takes 33 strokes, and the second time starts the other way round." */
export function repeatSentence({ bowing }: BowingLanguage, repeat: RepeatStudy): string {
  const { strokes, secondPass } = repeat;
  const second = secondPass === null ? '' : bowing.secondTime[secondPass];
  return `${strokesOfTimes(bowing, strokes)}${second}.`;
}

function strokesOfTimes(bowing: BowingPhrases, strokes: readonly number[]): string {
  if (strokes.length < 2) return bowing.onceThrough(strokes[0] ?? 0);
  return new Set(strokes).size === 1
    ? bowing.eachTime(at(strokes, 0))
    : bowing.unlikeTimes(strokes);
}

/** How the whole tune can be mended at once, or what stands in the way. */
export function wholeTuneSentence(language: BowingLanguage, tune: Tune, whole: WholeTune): string {
  const said = language.bowing.whole;
  switch (whole.kind) {
    case 'solved':
      return whole.changes.length === 0
        ? said.nothing
        : said.solved(whole.changes.map(edit => editClause(language, tune, edit)));
    case 'contradiction':
      return said.contradiction(whole.demands.map(d => demandWords(language, tune, d)));
    default:
      return said[whole.kind];
  }
}

function demandWords(language: BowingLanguage, tune: Tune, demand: Demand): string {
  const { demands } = language.bowing;
  switch (demand.kind) {
    case 'anchor':
      return demands.anchor(demand.id, demand.pass);
    case 'sign':
      return demands.sign(noteWords(language, tune, demand.event), demand.pass);
    case 'repeat':
      return demands.repeat(at(tune.parts, demand.part).name);
    case 'opening':
      return demands.opening;
  }
}
