import { notesOfBars } from '../drills/drill-source.ts';
import { noteAt } from '../music/note-at.ts';
import type { Direction } from '../music/tune.ts';
import { at } from '../must.ts';
import { noteLetter } from '../notation/note-letter.ts';
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

/** What a language says of a bead. */
export interface BeadSpeech {
  /** "note 3 of A6", of an event. */
  readonly place: (event: number) => string;
  /** "note 3", counted in the chain. */
  readonly nth: (n: number) => string;
  readonly leftOut: string;
  /** "F sharp, high 2 on D", of an event. */
  readonly note: (event: number) => string;
  /** Finger and string, short. */
  readonly where: (event: number) => string;
  readonly slurredOn: string;
  readonly bow: (d: Direction) => string;
}

/** Notes as beads. */
export function layBeads(
  source: ToldSource,
  events: readonly number[],
  marks: BeadMarks,
  speech: BeadSpeech,
): Bead[] {
  const { tune } = source;
  return events.map((event, i) => {
    const hidden = marks.hidden?.has(event) === true;
    const bar = tune.events[event]?.bar;
    const opens = !marks.noBars && bar !== tune.events[events[i - 1] ?? -1]?.bar;
    const stroke = marks.strokes?.[i] ?? null;
    const slurred = marks.slurred?.[i] === true;
    const said = marks.noBars ? [] : [speech.place(event)];
    if (!hidden) said.push(speech.note(event));
    else said.push(marks.noBars ? speech.nth(i + 1) : speech.leftOut);
    if (slurred) said.push(speech.slurredOn);
    else if (stroke) said.push(speech.bow(stroke));
    return {
      event,
      letter: hidden ? null : letterOf(source, event),
      said: said.join(', '),
      where: marks.where && !hidden ? speech.where(event) : null,
      stroke,
      slurred,
      bar: opens ? (tune.bars[bar ?? -1]?.name ?? null) : null,
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

/** Finger and string, short: "2 D"; "0 D A" of a double stop; empty out of first position. */
export const shortStops = (
  { fingering }: ToldSource,
  event: number,
  strings: readonly string[],
): string =>
  (fingering[event] ?? [])
    .flatMap(s => (s ? [`${s.finger} ${strings[s.string - 1] ?? ''}`] : []))
    .join(' ');
