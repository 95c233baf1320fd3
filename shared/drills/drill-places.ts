import type { Direction } from '../music/tune.ts';
import type { IntoDrill } from './drill.ts';
import { type DrillSource, noteOf } from './drill-source.ts';

/** The first note of the first full bar of some, as an event index; -1 where there is none. */
export function firstFullNote(source: DrillSource, bars: readonly number[]): number {
  const bar = source.tune.bars[bars.find(b => source.tune.bars[b]?.pickup === false) ?? -1];
  for (let e = bar?.first ?? 0; e < (bar?.end ?? 0); e++) if (noteOf(source, e)) return e;
  return -1;
}

/** How a note's bar is reached, and how many strokes of the bar come before the note's own. */
export function strokesIntoBar(
  { performance, bowing }: DrillSource,
  event: number,
  otherwise: Direction,
): { readonly reached: Direction; readonly before: number } {
  const { strokes, strokeOf } = bowing.plan;
  const k = performance.notes.findIndex(n => n.event === event);
  const bar = performance.notes.findIndex(n => n.barPlayed === performance.notes[k]?.barPlayed);
  return {
    reached: strokes[strokeOf[bar] ?? -1]?.direction ?? otherwise,
    before: (strokeOf[k] ?? 0) - (strokeOf[bar] ?? 0),
  };
}

/** For each note of the longest way into a passage: it goes on in the stroke before. */
export function slursOfWayIn({ performance, bowing }: DrillSource, drill: IntoDrill): boolean[] {
  const notes = drill.steps.at(-1)?.notes ?? [];
  const { strokeOf } = bowing.plan;
  const end = performance.notes.findIndex(n => n.event === drill.first && n.pass === drill.pass);
  const from = end - notes.length;
  return notes.map((_, i) => i > 0 && strokeOf[from + i] === strokeOf[from + i - 1]);
}
