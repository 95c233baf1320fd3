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
      return `A run of ${hook.notes.length} letters ${hook.way}: ${hook.notes.map(name).join(', ')}.`;
    case 'same-finger': {
      const [a, b] = hook.notes;
      return `Finger ${hook.finger} on two strings: ${name(a)} and ${name(b)}.`;
    }
    case 'crossings':
      return crossingSentence(hook.crossings, stringNames(tuning, names));
    case 'symmetric-strokes':
      return `The strokes are the same from either end: ${hook.counts.join(' ')}.`;
  }
}

/** "Slurred in twos: G–A, B–C." */
const pairsSentence = (pairs: readonly string[]): string =>
  pairs.length === 1 ? `One slurred pair: ${pairs[0]}.` : `Slurred in twos: ${pairs.join(', ')}.`;

/** "Every new string begins on an up-bow." "New strings: to A on a down-bow, to D within a stroke." */
function crossingSentence(crossings: readonly Crossing[], strings: readonly string[]): string {
  const changed = crossings.filter(c => !c.slurred && c.stroke !== null);
  const strokes = new Set(changed.map(c => c.stroke));
  const [only] = strokes;
  if (changed.length === crossings.length && changed.length > 1 && strokes.size === 1) {
    return `Every new string begins on ${only === 'down' ? 'a down-bow' : 'an up-bow'}.`;
  }
  const told = crossings.map(c => {
    const to = `to ${strings[c.to - 1]}`;
    if (c.slurred) return `${to} within a stroke`;
    return c.stroke ? `${to} on ${c.stroke === 'down' ? 'a down-bow' : 'an up-bow'}` : to;
  });
  return `${told.length === 1 ? 'One new string' : 'New strings'}: ${told.join(', ')}.`;
}
