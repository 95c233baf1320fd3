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
  let [top, bottom] = [Number.POSITIVE_INFINITY, staffBottom];
  for (const { boxes, slurs, above } of cells) {
    top = Math.min(top, above.top);
    for (const drawn of [boxes, ...slurs.map((arc, i) => arcBoxes(arc, above.lifts.get(i)))]) {
      for (const box of drawn) {
        top = Math.min(top, box.top);
        bottom = Math.max(bottom, box.bottom);
      }
    }
  }
  const [notesTop, notesBottom] = [top - 2, bottom + 2];
  const labelRow = 17;
  const lanes = Math.max(0, ...cells.map(c => chordLanes(c)));
  const chordRow = lanes === 0 ? 0 : 15 + (lanes - 1) * chordLane;
  const dy = Math.ceil(labelRow + chordRow - notesTop);
  return {
    dy,
    notesTop: notesTop + dy,
    notesBottom: notesBottom + dy,
    labels: 14,
    endings: 1.5,
    chords: labelRow + chordRow - 4,
    letters: letters ? notesBottom + dy + letterSize : null,
    height: Math.ceil(notesBottom + dy + (letters ? letterSize + 5 : 2)),
  };
}
