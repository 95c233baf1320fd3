import { chordLane, chordLanes } from './chord-row.ts';
import type { DrawnCell } from './draw-cell.ts';
import { staffBottom } from './note-places.ts';
import { letterSize } from './note-room.ts';
import { arcBoxes } from './slur-arcs.ts';

/** The rows that all cells of a tune share: each y counted from the top of the drawing. */
export interface Rows {
  /** Added to every y of abcjs's, which counts from staff step 0. */
  readonly dy: number;
  /** Highest and lowest points of notes and signs. */
  readonly notesTop: number;
  readonly notesBottom: number;
  /** Base lines of text, and the line of endings' brackets. */
  readonly chords: number;
  readonly endings: number;
  readonly labels: number;
  /** null where letters are not drawn. */
  readonly letters: number | null;
  readonly height: number;
}

/** From the top: endings with letters of part and phrase, chord symbols, signs and notes, letters. */
export function layRows(cells: readonly DrawnCell[], letters: boolean): Rows {
  const all = cells.flatMap(c => [
    ...c.boxes,
    ...c.slurs.flatMap((arc, i) => arcBoxes(arc, c.above.lifts.get(i))),
  ]);
  const notesTop = Math.min(...cells.map(c => c.above.top), ...all.map(b => b.top)) - 2;
  const notesBottom = Math.max(staffBottom, ...all.map(b => b.bottom)) + 2;
  const labelRow = 17;
  const lanes = Math.max(0, ...cells.map(c => chordLanes(c)));
  const chordRow = lanes === 0 ? 0 : 15 + (lanes - 1) * chordLane;
  const dy = Math.ceil(labelRow + chordRow - notesTop);
  const bottom = notesBottom + dy;
  return {
    dy,
    notesTop: notesTop + dy,
    notesBottom: bottom,
    labels: 14,
    endings: 1.5,
    chords: labelRow + chordRow - 4,
    letters: letters ? bottom + letterSize : null,
    height: Math.ceil(bottom + (letters ? letterSize + 5 : 2)),
  };
}
