import type { Tuning } from '../fingering/fingering.ts';
import { noteAt, topPitch } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Crossing, Hook } from '../sections/hooks.ts';
import { type SpokenLanguage, spokenPitch, stringNames } from './spoken.ts';

export interface HookPhrases {
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

export interface HookLanguage extends SpokenLanguage {
  readonly hooks: HookPhrases;
}

/** What stands out in a passage, as a short sentence. */
export function hookSentence(
  language: HookLanguage,
  tune: Tune,
  tuning: Tuning,
  hook: Hook,
  names: NoteNames,
): string {
  const { hooks } = language;
  const name = (event: number): string =>
    spokenPitch(language, topPitch(noteAt(tune, event)), names);
  switch (hook.kind) {
    case 'slurred-pairs':
      return hooks.slurredPairs(hook.pairs.map(([a, b]) => `${name(a)}–${name(b)}`));
    case 'run':
      return hooks.run(hook.way, hook.notes.map(name));
    case 'same-finger':
      return hooks.sameFinger(hook.finger, name(hook.notes[0]), name(hook.notes[1]));
    case 'crossings':
      return crossingSentence(hooks, hook.crossings, stringNames(language, tuning, names));
    case 'symmetric-strokes':
      return hooks.symmetricStrokes(hook.counts);
  }
}

/** One sentence for all where two or more new strings all begin on the same stroke. */
function crossingSentence(
  hooks: HookPhrases,
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
    ? hooks.everyCrossingOn(first.stroke)
    : hooks.crossings(told);
}
