import { at } from '../must.ts';
import type { BarPoint, BarRange } from './bar-range.ts';
import type { Tune } from './tune.ts';

/** First and last note of a passage, as event indices, both included. */
export interface Passage {
  readonly first: number;
  readonly last: number;
}

/** What in a range names nothing in the tune, and what there is instead. */
export interface UnknownPassage {
  readonly unknown: string;
  readonly known: readonly string[];
}

/**
 * Finds the first and last note of a passage. `B8`, where only `B8/1` and `B8/2` are written, is the bar of the
 * ending whose numbers stand first on the page; at the end of a range it is that of the ending the
 * range began in, if it began in one. A range that runs backwards names nothing, and neither does a
 * bar without notes.
 */
export function resolvePassage(tune: Tune, range: BarRange): Passage | UnknownPassage {
  const from = findBar(tune, range.from.bar, null);
  if (from === null) return unknownBar(tune, range.from.bar);
  const to = findBar(tune, range.to.bar, from);
  if (to === null) return unknownBar(tune, range.to.bar);
  const first = findNote(tune, from, range.from, 'first');
  if (first === null) return unknownNote(tune, from, range.from);
  const last = findNote(tune, to, range.to, 'last');
  if (last === null) return unknownNote(tune, to, range.to);
  if (last < first) {
    return {
      unknown: `${range.from.bar}-${range.to.bar}`,
      known: [`${range.to.bar}-${range.from.bar}`],
    };
  }
  return { first, last };
}

/** Index of a named bar: an exact name, else a bar of an ending, that of bar `near` before others. */
function findBar(tune: Tune, name: string, near: number | null): number | null {
  const exact = tune.bars.findIndex(b => b.name === name);
  if (exact >= 0) return exact;
  const inEndings = tune.bars.flatMap((b, i) => (plainName(b.name) === name ? [i] : []));
  const ending = near === null ? '' : at(tune.bars, near).endings.join();
  const alike = inEndings.find(i => ending !== '' && at(tune.bars, i).endings.join() === ending);
  return alike ?? inEndings[0] ?? null;
}

/** `B8/2` without its ending: `B8`. */
const plainName = (name: string): string => name.replace(/\/.*/, '');

function findNote(
  tune: Tune,
  barIndex: number,
  point: BarPoint,
  side: 'first' | 'last',
): number | null {
  const notes = notesOf(tune, barIndex);
  if (point.note !== null) return notes[point.note - 1] ?? null;
  return (side === 'first' ? notes[0] : notes.at(-1)) ?? null;
}

function notesOf(tune: Tune, barIndex: number): readonly number[] {
  const { first, end } = at(tune.bars, barIndex);
  const notes: number[] = [];
  for (let e = first; e < end; e++) if (at(tune.events, e).kind === 'note') notes.push(e);
  return notes;
}

const unknownBar = (tune: Tune, name: string): UnknownPassage => ({
  unknown: name,
  known: tune.bars.map(b => b.name),
});

function unknownNote(tune: Tune, barIndex: number, point: BarPoint): UnknownPassage {
  const { name } = at(tune.bars, barIndex);
  return {
    unknown: point.note === null ? point.bar : `${point.bar}:${point.note}`,
    known: notesOf(tune, barIndex).map((_, i) => `${name}:${i + 1}`),
  };
}
