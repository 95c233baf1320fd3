import type { Tuning } from '../../fingering/fingering.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { Tune } from '../../music/tune.ts';
import type { Crossing, Hook } from '../../sections/hooks.ts';
import { spokenPitch, stringNames } from './bound.ts';

/** What stands out in a passage, as a short sentence. */
export function hookSentence(tune: Tune, tuning: Tuning, hook: Hook, names: NoteNames): string {
  const name = (event: number): string => {
    const e = tune.events[event];
    const top = e?.kind === 'note' ? e.pitches.at(-1) : undefined;
    return top ? spokenPitch(top, names) : '';
  };
  switch (hook.kind) {
    case 'slurred-pairs':
      return pairsSentence(hook.pairs.map(([a, b]) => `${name(a)}–${name(b)}`));
    case 'run':
      return `Ein Lauf von ${hook.notes.length} Tönen ${hook.way === 'up' ? 'aufwärts' : 'abwärts'}: ${hook.notes.map(name).join(', ')}.`;
    case 'same-finger': {
      const [a, b] = hook.notes;
      return `Finger ${hook.finger} auf zwei Saiten: ${name(a)} und ${name(b)}.`;
    }
    case 'crossings':
      return crossingSentence(hook.crossings, stringNames(tuning, names));
    case 'symmetric-strokes':
      return `Die Striche sind von beiden Enden her gleich: ${hook.counts.join(' ')}.`;
  }
}

const pairsSentence = (pairs: readonly string[]): string =>
  pairs.length === 1
    ? `Ein gebundenes Paar: ${pairs[0]}.`
    : `Zu zweien gebunden: ${pairs.join(', ')}.`;

/** „Jede neue Saite beginnt im Aufstrich.“ „Saitenwechsel: auf A im Abstrich, auf D im selben Strich.“ */
function crossingSentence(crossings: readonly Crossing[], strings: readonly string[]): string {
  const changed = crossings.filter(c => !c.slurred && c.stroke !== null);
  const strokes = new Set(changed.map(c => c.stroke));
  const [only] = strokes;
  if (changed.length === crossings.length && changed.length > 1 && strokes.size === 1) {
    return `Jede neue Saite beginnt im ${only === 'down' ? 'Abstrich' : 'Aufstrich'}.`;
  }
  const told = crossings.map(c => {
    const to = `auf ${strings[c.to - 1]}`;
    if (c.slurred) return `${to} im selben Strich`;
    return c.stroke ? `${to} im ${c.stroke === 'down' ? 'Abstrich' : 'Aufstrich'}` : to;
  });
  return `${told.length === 1 ? 'Ein Saitenwechsel' : 'Saitenwechsel'}: ${told.join(', ')}.`;
}
