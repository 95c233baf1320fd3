import type { Tuning } from '../fingering/fingering.ts';
import { noteAt, topPitch } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Crossing, Standout } from '../sections/standouts.ts';
import { type SpokenLanguage, spokenPitch, stringNames } from './spoken.ts';

/** The sentences of one language for what stands out. Notes and strings come as that language names them. */
export interface StandoutPhrases {
  /** "G–A", "B–C". */
  readonly slurredPairs: (pairs: readonly string[]) => string;
  readonly run: (way: 'up' | 'down', notes: readonly string[]) => string;
  readonly sameFinger: (finger: number, first: string, second: string) => string;
  readonly symmetricStrokes: (counts: readonly number[]) => string;
  readonly everyCrossingOn: (stroke: Direction) => string;
  readonly crossings: (told: readonly CrossingFacts[]) => string;
}

/** A new string: within a stroke, on a stroke, or (null) on one that is not known. */
export interface CrossingFacts {
  readonly to: string;
  readonly stroke: Direction | 'within' | null;
}

/** What a language must have for `standoutSentence`. */
export interface StandoutLanguage extends SpokenLanguage {
  readonly standouts: StandoutPhrases;
}

/** What stands out in a passage, as a short sentence. */
export function standoutSentence(
  language: StandoutLanguage,
  tune: Tune,
  tuning: Tuning,
  standout: Standout,
  names: NoteNames,
): string {
  const { standouts } = language;
  const name = (event: number): string =>
    spokenPitch(language, topPitch(noteAt(tune, event)), names);
  switch (standout.kind) {
    case 'slurred-pairs':
      return standouts.slurredPairs(standout.pairs.map(([a, b]) => `${name(a)}–${name(b)}`));
    case 'run':
      return standouts.run(standout.way, standout.notes.map(name));
    case 'same-finger':
      return standouts.sameFinger(
        standout.finger,
        name(standout.notes[0]),
        name(standout.notes[1]),
      );
    case 'crossings':
      return crossingSentence(standouts, standout.crossings, stringNames(language, tuning, names));
    case 'symmetric-strokes':
      return standouts.symmetricStrokes(standout.counts);
  }
}

/** One sentence for all where two or more new strings all begin on the same stroke. */
function crossingSentence(
  standouts: StandoutPhrases,
  crossings: readonly Crossing[],
  strings: readonly string[],
): string {
  const told = crossings.map(c => ({
    to: at(strings, c.to - 1),
    stroke: c.slurred ? ('within' as const) : c.stroke,
  }));
  const [first] = told;
  const alike = told.length > 1 && told.every(c => c.stroke === first?.stroke);
  return alike && first?.stroke && first.stroke !== 'within'
    ? standouts.everyCrossingOn(first.stroke)
    : standouts.crossings(told);
}
