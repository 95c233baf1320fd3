import { noteAt } from '../../music/note-at.ts';
import type { Direction } from '../../music/tune.ts';
import { type BeadMarks, layBeads, shortStops as shortStopsOn } from '../lay-beads.ts';
import type { Bead, ToldSource } from '../told-drill.ts';
import { noteWords, spokenNote, stringNames } from './bound.ts';

/** Notes as beads. */
export const beadsOf = (
  source: ToldSource,
  events: readonly number[],
  marks: BeadMarks = {},
): Bead[] =>
  layBeads(source, events, marks, {
    place: event => noteWords(source.tune, event),
    nth: n => `note ${n}`,
    leftOut: 'left out',
    note: event => saidNote(source, event),
    where: event => shortStops(source, event),
    slurredOn: 'slurred on',
    bow: bowWords,
  });

export const bowWords = (d: Direction): string => (d === 'down' ? 'down-bow' : 'up-bow');
export const aBow = (d: Direction): string => (d === 'down' ? 'a down-bow' : 'an up-bow');

/** "F sharp, high 2 on D"; "D, open D and A, open A" of a double stop. */
export const saidNote = (source: ToldSource, event: number): string =>
  noteAt(source.tune, event)
    .pitches.map((p, i) =>
      spokenNote(source.fingering[event]?.[i] ?? null, p, source.tuning, source.names),
    )
    .join(' and ');

/** "2 D"; "0 D A" of a double stop. */
export const shortStops = (source: ToldSource, event: number): string =>
  shortStopsOn(source, event, stringNames(source.tuning, source.names));

/** "bar A3", "bars A3 to A6". */
export function barsWords({ tune }: ToldSource, bars: readonly number[]): string {
  const [from, to] = [tune.bars[bars[0] ?? -1]?.name, tune.bars[bars.at(-1) ?? -1]?.name];
  return from === to ? `bar ${from}` : `bars ${from} to ${to}`;
}

/** "bar A3" of notes in it. */
export const barsOfNotes = (source: ToldSource, events: readonly number[]): string =>
  barsWords(source, [...new Set(events.map(e => source.tune.events[e]?.bar ?? -1))]);

export const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const ordinal = (n: number): string =>
  ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'][n] ?? `${n}th`;
