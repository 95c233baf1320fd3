import { type DrillSource, noteOf, notesOfBars } from '../../drills/drill-source.ts';
import type { Direction } from '../../music/tune.ts';
import { noteLetter } from '../../notation/note-letter.ts';
import type { Bead } from '../told-drill.ts';
import { noteWords } from './bowing.ts';
import { spokenNote, stringNames } from './spoken.ts';

/** What of a note a bead shows; all that is left out is not shown. */
export interface BeadMarks {
  readonly hidden?: ReadonlySet<number>;
  readonly where?: boolean;
  /** Way of the bow at each place of the chain. */
  readonly strokes?: readonly (Direction | null)[];
  readonly slurred?: readonly boolean[];
  /** Bar names are left out: the notes of a choice would give away where they are from. */
  readonly noBars?: boolean;
}

/** Notes as beads. */
export function beadsOf(
  source: DrillSource,
  events: readonly number[],
  marks: BeadMarks = {},
): Bead[] {
  const { tune } = source;
  return events.map((event, i) => {
    const hidden = marks.hidden?.has(event) === true;
    const bar = tune.events[event]?.bar;
    const opens = !marks.noBars && bar !== tune.events[events[i - 1] ?? -1]?.bar;
    const stroke = marks.strokes?.[i] ?? null;
    const slurred = marks.slurred?.[i] === true;
    const place = marks.noBars ? [] : [noteWords(tune, event)];
    const sound = hidden
      ? [marks.noBars ? `note ${i + 1}` : 'left out']
      : [saidNote(source, event)];
    const bow = slurred ? ['slurred on'] : stroke ? [bowWords(stroke)] : [];
    return {
      event,
      letter: hidden ? null : letterOf(source, event),
      said: [...place, ...sound, ...bow].join(', '),
      where: marks.where && !hidden ? shortStops(source, event) : null,
      stroke,
      slurred,
      bar: opens ? (tune.bars[bar ?? -1]?.name ?? null) : null,
      anchored: source.bowing.anchors.some(a => a.first <= event && event <= a.last),
    };
  });
}

export const bowWords = (d: Direction): string => (d === 'down' ? 'down-bow' : 'up-bow');
export const aBow = (d: Direction): string => (d === 'down' ? 'a down-bow' : 'an up-bow');

/** "F sharp, high 2 on D"; "D, open D and A, open A" of a double stop. */
export const saidNote = (source: DrillSource, event: number): string =>
  (noteOf(source, event)?.pitches ?? [])
    .map((p, i) => spokenNote(source.fingering[event]?.[i] ?? null, p, null, source.tuning))
    .join(' and ');

/** "G", "f♮"; "D+A" of a double stop. */
export const letterOf = (source: DrillSource, event: number): string => {
  const note = noteOf(source, event);
  const key = source.tune.bars[note?.bar ?? -1]?.key ?? source.tune.key;
  return (note?.pitches ?? []).map(p => noteLetter(p, key)).join('+');
};

/** Finger and string, short: "2 D"; "0 D A" of a double stop; empty out of first position. */
export function shortStops({ fingering, tuning }: DrillSource, event: number): string {
  const names = stringNames(tuning);
  return (fingering[event] ?? [])
    .flatMap(s => (s ? [`${s.finger} ${names[s.string - 1] ?? ''}`] : []))
    .join(' ');
}

/** "bar A3", "bars A3 to A6". */
export function barsWords({ tune }: DrillSource, bars: readonly number[]): string {
  const [from, to] = [tune.bars[bars[0] ?? -1]?.name, tune.bars[bars.at(-1) ?? -1]?.name];
  return from === to ? `bar ${from}` : `bars ${from} to ${to}`;
}

/** "bar A3" of notes in it. */
export const barsOfNotes = (source: DrillSource, events: readonly number[]): string =>
  barsWords(source, [...new Set(events.map(e => source.tune.events[e]?.bar ?? -1))]);

/** The first notes of bars, as letters: "G A B c". */
export const openingOf = (source: DrillSource, bars: readonly number[]): string =>
  notesOfBars(source, bars)
    .slice(0, 4)
    .map(e => letterOf(source, e))
    .join(' ');

export const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const ordinal = (n: number): string =>
  ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'][n] ?? `${n}th`;
