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
    nth: n => `Note ${n}`,
    leftOut: 'weggelassen',
    note: event => saidNote(source, event),
    where: event => shortStops(source, event),
    slurredOn: 'gebunden',
    bow: bowWords,
  });

export const bowWords = (d: Direction): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');

/** „Fis, hoher 2 auf D“; both notes of a double stop. */
export const saidNote = (source: ToldSource, event: number): string =>
  noteAt(source.tune, event)
    .pitches.map((p, i) =>
      spokenNote(source.fingering[event]?.[i] ?? null, p, source.tuning, source.names),
    )
    .join(' und ');

/** „2 D“; „0 D A“ of a double stop. */
export const shortStops = (source: ToldSource, event: number): string =>
  shortStopsOn(source, event, stringNames(source.tuning, source.names));

/** „Takt A3“, „Takte A3 bis A6“. */
export function barsWords({ tune }: ToldSource, bars: readonly number[]): string {
  const [from, to] = [tune.bars[bars[0] ?? -1]?.name, tune.bars[bars.at(-1) ?? -1]?.name];
  return from === to ? `Takt ${from}` : `Takte ${from} bis ${to}`;
}

/** „Takt A3“, „den Takten A3 bis A6“: after „von“ and „in“. */
export function barsDative({ tune }: ToldSource, bars: readonly number[]): string {
  const [from, to] = [tune.bars[bars[0] ?? -1]?.name, tune.bars[bars.at(-1) ?? -1]?.name];
  return from === to ? `Takt ${from}` : `den Takten ${from} bis ${to}`;
}

/** The same of notes in them. */
export const barsOfNotes = (source: ToldSource, events: readonly number[]): string =>
  barsDative(source, [...new Set(events.map(e => source.tune.events[e]?.bar ?? -1))]);
