import type { Direction } from '../music/tune.ts';
import { at, got } from '../must.ts';
import type { IntoDrill } from './drill.ts';
import { type DrillSource, firstFullBar } from './drill-source.ts';

/** Event of the first note of the first of some bars that is no pickup; null where there is none. */
export function firstFullNote({ tune }: DrillSource, bars: readonly number[]): number | null {
  const bar = firstFullBar(tune, bars);
  if (!bar) return null;
  const note = tune.events.slice(bar.first, bar.end).findIndex(e => e.kind === 'note');
  return note < 0 ? null : bar.first + note;
}

/**
 * The stroke of the first note that begins in the bar of `event`, and how many strokes come between
 * it and the event's own, the first time that it is played. `event` begins a sounded note.
 */
export function strokesIntoBar(
  { performance, bowing, firstSounded }: DrillSource,
  event: number,
): { readonly reached: Direction; readonly before: number } {
  const { strokes, strokeOf } = bowing.plan;
  const note = got(firstSounded.get(event), 'sounded note of the event');
  const bar = at(performance.bars, at(performance.notes, note).barPlayed).first;
  return {
    reached: at(strokes, at(strokeOf, bar)).direction,
    before: at(strokeOf, note) - at(strokeOf, bar),
  };
}

/** For each note of the longest way into a passage, whether it goes on in the stroke before. */
export function slursOfWayIn({ performance, bowing }: DrillSource, drill: IntoDrill): boolean[] {
  const { notes } = at(drill.steps, drill.steps.length - 1);
  const { strokeOf } = bowing.plan;
  const end = performance.notes.findIndex(n => n.event === drill.first && n.pass === drill.pass);
  const from = end - notes.length;
  return notes.map((_, i) => i > 0 && strokeOf[from + i] === strokeOf[from + i - 1]);
}
