import type { Tuning } from '../fingering/fingering.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Pitch } from '../music/pitch.ts';

/**
 * Names of the strings, made by `name` from their notes. Where two strings have the same note they
 * are told apart by `places`: AEAE has "high E", "high A", "low E", "low A"; a third is "middle".
 */
export function nameStrings(
  tuning: Tuning,
  name: (p: Pitch) => string,
  places: Readonly<Record<'high' | 'middle' | 'low', string>>,
): readonly string[] {
  const letters = tuning.map(name);
  return letters.map((letter, i) => {
    const alike = letters.flatMap((n, at) => (n === letter ? [at] : []));
    if (alike.length === 1) return letter;
    const place = i === alike[0] ? 'high' : i === alike.at(-1) ? 'low' : 'middle';
    return places[place] + letter;
  });
}

/**
 * Names of the strings under each naming of notes, asked for note by note: what `name` answered for
 * a tuning is kept as long as the tuning is.
 */
export function keptByTuning(
  name: (tuning: Tuning, names: NoteNames) => readonly string[],
): (tuning: Tuning, names: NoteNames) => readonly string[] {
  const kept = new WeakMap<Tuning, Map<NoteNames, readonly string[]>>();
  return (tuning, names) => {
    const known = kept.get(tuning)?.get(names);
    if (known) return known;
    const found = name(tuning, names);
    kept.set(tuning, (kept.get(tuning) ?? new Map()).set(names, found));
    return found;
  };
}
