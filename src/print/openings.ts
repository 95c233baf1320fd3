import type { Study } from '../../shared/study.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import { type DrawnRow, drawRow, type Look } from './draw-row.ts';
import type { Markup } from './markup.ts';
import { type PrintContext, rowValue, titleOf, tuneText } from './print-context.ts';
import { printedTunes } from './printed-tunes.ts';
import { firstSpoken } from './sheet-markup.ts';
import { unitLength } from './sizes.ts';

/** The beginning of a tune in small notation. */
export interface Opening {
  /** Argument of the template's function `row`. */
  readonly row: Markup;
  /** Label of the tune's sheet. */
  readonly to: string;
  readonly title: string;
  /** Height in millimetres. */
  readonly height: number;
}

/** Most notes that its text for screen readers names. */
const spokenNotes = 8;
/** Room above the staff or the highest note for stems, beams and slurs, in drawing units. */
const headroom = 20;
const overNote = 14;

/**
 * Draws the openings of all tunes, by title, on a staff of `staff` millimetres: as many phrases of the first part
 * as fit whole in `width` millimetres, or what fits of the first. Strokes, letters and labels are left out, and so
 * is the room for them.
 */
export function openings(context: PrintContext, staff: number, width: number): readonly Opening[] {
  const look: Look = {
    sizes: { ...context.sizes, staff, figures: null },
    marks: 'anchors',
    fingers: false,
    letters: false,
    bare: true,
  };
  return printedTunes(context).flatMap(tune => {
    const row = drawOpening(tune.study, tune.score, look, width);
    if (row === null) return [];
    const alt = context.words.printWords.openingRow(
      firstSpoken(tune.study, context.words, spokenNotes),
    );
    return [
      {
        row: rowValue(context, tune, row, alt),
        to: `tune/${tune.block.id}`,
        title: tuneText(context, tune, titleOf(tune)),
        height: row.height,
      },
    ];
  });
}

function drawOpening(study: Study, score: Score, look: Look, width: number): DrawnRow | null {
  const [first] = score.cells;
  if (!first) return null;
  const unit = unitLength(look.sizes.staff, first.staffSpace);
  const room = width / unit - first.preludeWidth;
  const cells = wholeCells(score.cells, room);
  const music = cells.reduce((sum, c) => sum + c.width, 0);
  const edge = Math.min(room, music);
  const row = drawRow(score, cells, look, () => (edge < music ? [[0, edge]] : null));
  const top = Math.max(
    0,
    Math.min(first.staffTop - headroom, highestNote(study, cells) - overNote),
  );
  const [full, height] = [first.preludeWidth + edge, row.height / unit - top];
  const box = `viewBox="0 ${round(top)} ${round(full)} ${round(height)}"`;
  return {
    ...row,
    svg: row.svg.replace(/viewBox="[^"]*"/, box),
    width: full * unit,
    height: height * unit,
  };
}

/** The first cells of the tune, as many as fit whole, and at least one. */
function wholeCells(all: readonly ScoreCell[], room: number): readonly ScoreCell[] {
  const [first, ...rest] = all;
  const cells = first ? [first] : [];
  let left = room - (first?.width ?? 0);
  for (const cell of rest) {
    left -= cell.width;
    if (left < 0 || cell.part !== first?.part) break;
    cells.push(cell);
  }
  return cells;
}

/** The diatonic step of the top line of the treble staff, F5, counted from C0. */
const topLine = 5 * 7 + 3;

/** Distance of the highest note of some cells from the top, in drawing units. */
function highestNote({ tune }: Study, cells: readonly ScoreCell[]): number {
  const steps = cells
    .flatMap(c => c.notes)
    .flatMap(({ event }) => {
      const note = tune.events[event];
      return note?.kind === 'note'
        ? note.pitches.map(p => 'CDEFGAB'.indexOf(p.letter) + 7 * p.octave)
        : [];
    });
  const { staffTop = 0, staffSpace = 0 } = cells[0] ?? {};
  return staffTop - (Math.max(topLine, ...steps) - topLine) * (staffSpace / 2);
}

const round = (x: number): number => Math.round(x * 100) / 100;
