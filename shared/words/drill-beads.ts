import { notesOfBars } from '../drills/drill-source.ts';
import { noteAt } from '../music/note-at.ts';
import type { Direction } from '../music/tune.ts';
import { at } from '../must.ts';
import { noteLetter } from '../notation/note-letter.ts';
import type { BarSpan, DrillLanguage } from './drill-phrases.ts';
import { noteWords } from './note-places.ts';
import { spokenNote } from './say-tune.ts';
import { stringNames } from './spoken.ts';
import type { Bead, ToldSource } from './told-drill.ts';

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
  language: DrillLanguage,
  source: ToldSource,
  events: readonly number[],
  marks: BeadMarks = {},
): Bead[] {
  const { tune } = source;
  const { beads } = language.drills;
  const barOf = (event: number): number => at(tune.events, event).bar;
  return events.map((event, i) => {
    const hidden = marks.hidden?.has(event) === true;
    const before = events[i - 1];
    const opens = before === undefined || barOf(event) !== barOf(before);
    const stroke = marks.strokes?.[i] ?? null;
    const slurred = marks.slurred?.[i] === true;
    const said = marks.noBars ? [] : [noteWords(language, tune, event)];
    if (!hidden) said.push(saidNote(language, source, event));
    else said.push(marks.noBars ? beads.nth(i + 1) : beads.leftOut);
    if (slurred) said.push(beads.slurredOn);
    else if (stroke) said.push(beads.bow[stroke]);
    return {
      event,
      letter: hidden ? null : letterOf(source, event),
      said: said.join(', '),
      where: marks.where && !hidden ? shortStops(language, source, event) : null,
      stroke,
      slurred,
      bar: opens && !marks.noBars ? at(tune.bars, barOf(event)).name : null,
      anchored: source.bowing.anchors.some(a => a.first <= event && event <= a.last),
    };
  });
}

/** "G", "f♮"; "D+A" of a double stop. */
export const letterOf = (source: ToldSource, event: number): string => {
  const { bar, pitches } = noteAt(source.tune, event);
  const { key } = at(source.tune.bars, bar);
  return pitches.map(p => noteLetter(p, key, source.names)).join('+');
};

/** The first notes of bars, as letters: "G A B c". */
export const openingOf = (source: ToldSource, bars: readonly number[]): string =>
  notesOfBars(source, bars)
    .slice(0, 4)
    .map(e => letterOf(source, e))
    .join(' ');

/** "F sharp, high 2 on D"; "D, open D and A, open A" of a double stop. */
export const saidNote = (language: DrillLanguage, source: ToldSource, event: number): string =>
  noteAt(source.tune, event)
    .pitches.map((p, i) => {
      const stop = source.fingering[event]?.[i] ?? null;
      return spokenNote(language, stop, p, source.tuning, source.names);
    })
    .join(language.spoken.and);

/** Finger and string, short: "2 D"; "0 D A" of a double stop; empty out of first position. */
export function shortStops(
  language: DrillLanguage,
  { fingering, tuning, names }: ToldSource,
  event: number,
): string {
  const strings = stringNames(language, tuning, names);
  return (fingering[event] ?? [])
    .flatMap(s => (s ? [`${s.finger} ${at(strings, s.string - 1)}`] : []))
    .join(' ');
}

/** The span of some bars. */
export const barSpan = ({ tune }: ToldSource, bars: readonly number[]): BarSpan => ({
  from: at(tune.bars, at(bars, 0)).name,
  to: at(tune.bars, at(bars, bars.length - 1)).name,
});

/** The span of the bars that some notes stand in. */
export const barsOfNotes = (source: ToldSource, events: readonly number[]): BarSpan =>
  barSpan(
    source,
    events.map(e => at(source.tune.events, e).bar),
  );
