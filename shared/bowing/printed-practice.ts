import { diatonic } from '../music/pitch.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { at, got } from '../must.ts';
import { isDotted, type RhythmPlace } from './bar-rhythms.ts';

/** Number of slurred junctions of one kind, and of all. */
export type Count = readonly [slurred: number, of: number];

/**
 * Counts of slurred junctions in a printed book: by rhythm and note, for each type of tune and for all (`any`);
 * by the lengths of both notes and their place; and factors, as natural logarithms, by which the odds of a slur
 * differ with the interval and with staccato dots.
 */
export interface PrintedPractice {
  readonly source: string;
  /** Date of counting. */
  readonly counted: string;
  readonly all: Count;
  /** `1 1 inside`: lengths of both notes, in eighths of a bar, and what the second begins. */
  readonly places: Readonly<Record<string, Count>>;
  /** By type and rhythm: its number, and for each of its notes the number slurred to it. */
  readonly rhythms: Readonly<Record<string, Readonly<Record<string, readonly number[]>>>>;
  readonly intervals: Readonly<Record<string, number>>;
  readonly dots: Readonly<Record<string, number>>;
}

/** Properties by which a junction is counted. */
export interface JunctionKind {
  readonly type: string;
  readonly rhythm: string;
  readonly index: number;
  readonly place: string;
  readonly interval: 'same' | 'step' | 'third' | 'wider';
  /** Staccato dots over both notes, over one, over others in the half bar, or none. */
  readonly dots: 'both' | 'one' | 'near' | 'none';
}

/** Finds the kind of a junction between two events; null where one is not a note. */
export function junctionKind(
  tune: Tune,
  places: readonly (RhythmPlace | null)[],
  before: number,
  after: number,
): JunctionKind | null {
  const [a, b] = [at(tune.events, before), at(tune.events, after)];
  const [from, to] = [places[before], places[after]];
  if (a.kind !== 'note' || b.kind !== 'note' || !from || !to) return null;
  const dotted = [before, after].filter(e => isDotted(tune, e)).length;
  const begins = to.begins === 'inside' && from.half !== to.half ? 'half' : to.begins;
  return {
    type: tune.type ?? 'any',
    rhythm: to.rhythm,
    index: to.index,
    place: `${from.length} ${to.length} ${begins}`,
    interval: intervalOf(a, b),
    dots: dotted === 2 ? 'both' : dotted === 1 ? 'one' : to.dotsNear ? 'near' : 'none',
  };
}

function intervalOf(a: NoteEvent, b: NoteEvent): JunctionKind['interval'] {
  const [top, next] = [got(a.pitches.at(-1), 'pitch'), got(b.pitches.at(-1), 'pitch')];
  if (top.midi === next.midi) return 'same';
  const steps = Math.abs(diatonic(top) - diatonic(next));
  return steps <= 1 ? 'step' : steps === 2 ? 'third' : 'wider';
}

/** Weight of a coarser count in a finer one, in junctions: the best of 1 to 8 on the tunes counted. */
const weight = 3;

/**
 * Returns the natural logarithm of the odds that the book slurs a junction of this kind. Each finer count is
 * smoothed with the coarser: all junctions, lengths and place, rhythm, rhythm in tunes of the type.
 */
export function slurOdds(book: PrintedPractice, kind: JunctionKind): number {
  return (
    countedOdds(book, kind) + (book.intervals[kind.interval] ?? 0) + (book.dots[kind.dots] ?? 0)
  );
}

/** Returns the logarithm of the odds by rhythm and place alone. */
export function countedOdds(book: PrintedPractice, kind: JunctionKind): number {
  const inRhythm = (type: string): Count => {
    const counts = book.rhythms[type]?.[kind.rhythm] ?? [];
    return [counts[kind.index + 1] ?? 0, counts[0] ?? 0];
  };
  const finer = [book.places[kind.place] ?? [0, 0], inRhythm('any'), inRhythm(kind.type)] as const;
  let share = book.all[0] / book.all[1];
  for (const [slurred, of] of finer) share = (slurred + weight * share) / (of + weight);
  const inside = Math.min(Math.max(share, 0.002), 0.998);
  return Math.log(inside / (1 - inside));
}
