import type { BowPath } from '../bowing/bow-path.ts';
import type { Direction, Plan } from '../bowing/bowing.ts';
import { compare, type Fraction, fraction, multiply, toNumber } from '../music/fraction.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { namedNote, type PlanLanguage } from './plans.ts';

/** How the bow drifts over a plan, where to begin, and where it runs out. */
export interface BowPathPhrases {
  readonly noDrift: string;
  /** `slower`: the strokes that take more time. */
  readonly drift: (size: string, slower: Direction) => string;
  /** A length in whole `values`, or about so many quavers. */
  readonly length: (count: number, value: 'crotchet' | 'quaver' | 'semiquaver') => string;
  readonly aboutQuavers: (count: number) => string;
  readonly lasts: (from: PartOfBow) => string;
  /** On strokes in `direction`, at the place of a note. */
  readonly runsOut: (direction: Direction, place: string, from: PartOfBow) => string;
}

export type PartOfBow = 'frog' | 'nearer-frog' | 'middle' | 'nearer-tip' | 'tip';

export interface BowPathLanguage extends PlanLanguage {
  readonly bowPath: BowPathPhrases;
}

/** How the bow drifts, where to begin, and where it runs out. */
export function bowPathSentences(
  language: BowPathLanguage,
  tune: Tune,
  path: BowPath,
  { drift }: Pick<Plan, 'drift'>,
  names: NoteNames,
): readonly string[] {
  const said = language.bowPath;
  const size = fraction(Math.abs(drift.n), drift.d);
  const drifts =
    drift.n === 0 ? said.noDrift : said.drift(lengthWords(said, size), drift.n > 0 ? 'down' : 'up');
  const out = path.runsOut === null ? null : at(path.strokes, path.runsOut);
  const note = out?.notes.find(n => compare(n.to, path.bow) > 0 || compare(n.to, fraction(0)) < 0);
  if (!out || !note) return [drifts, said.lasts(partOfBow(path))];
  const place = namedNote(language, tune, note.event, names);
  return [drifts, said.runsOut(out.direction, place, partOfBow(path))];
}

/** Where on the bow a plan begins. */
function partOfBow({ start, bow }: BowPath): PartOfBow {
  const share = toNumber(start) / toNumber(bow);
  if (share < 1 / 8) return 'frog';
  if (share < 3 / 8) return 'nearer-frog';
  if (share <= 5 / 8) return 'middle';
  return share <= 7 / 8 ? 'nearer-tip' : 'tip';
}

/** "3 crotchets", "5 quavers"; a length that is neither to the nearest quaver. */
function lengthWords(said: BowPathPhrases, length: Fraction): string {
  for (const [value, part] of [
    ['crotchet', 4],
    ['quaver', 8],
    ['semiquaver', 16],
  ] as const) {
    const { n, d } = multiply(length, fraction(part));
    if (d === 1) return said.length(n, value);
  }
  return said.aboutQuavers(Math.max(1, Math.round(toNumber(length) * 8)));
}
