import type { Tune } from '../../shared/music/tune.ts';
import type { Cell } from './cut-cells.ts';

/** Drawing units for each note, and for bar lines: two staff spaces and a little, as books print. */
const perNote = 17.5;
const besides = 24;
const least = 220;
const most = 400;

/**
 * The width that each cell is drawn to, in drawing units. All are as wide as the fullest needs to be
 * read easily, so that phrases stand under one another; but one with half the bars and half the
 * notes of the fullest, as a second ending is, has half the width and can share a line with two. A
 * pickup is squeezed in: with it a tune's first phrase would widen all the others.
 * `asked`: the width of a full one, where paper says it.
 */
export function cellWidths(tune: Tune, cells: readonly Cell[], asked?: number): readonly number[] {
  const whole = cells.map(c => c.bars.flatMap(b => tune.bars[b] ?? []).filter(b => !b.pickup));
  const notes = whole.map(bars => bars.reduce((n, { first, end }) => n + end - first, 0));
  const bars = whole.map(b => b.length);
  const [mostBars, mostNotes] = [Math.max(...bars), Math.max(...notes)];
  const floor = cells.length === 1 ? 90 : least;
  const full = asked ?? Math.min(most, Math.max(floor, perNote * mostNotes + besides));
  const isHalf = (i: number): boolean =>
    (bars[i] ?? 0) * 2 <= mostBars && ((notes[i] ?? 0) - 1) * 2 <= mostNotes;
  return cells.map((_, i) => (isHalf(i) ? full / 2 : full));
}
