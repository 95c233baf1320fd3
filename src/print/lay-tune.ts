import type { Study } from '../../shared/study.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import { type DrawnRow, drawRow, type Look, type Shown } from './draw-row.ts';
import { unitLength } from './sizes.ts';

/**
 * The rows of a tune on paper. A row ends where a phrase ends; two phrases share one where they fit
 * at this staff, drawn again a little closer if need be, and else each has a row of its own.
 * `width`: millimetres between the margins.
 */
export function layTune(
  study: Study,
  score: Score,
  look: Look,
  width: number,
  draw: (study: Study, cellWidth: number) => Score,
  shown?: Shown,
): readonly DrawnRow[] {
  return layCells(study, score, score.cells, look, width, draw, shown);
}

/** The same for some cells of the tune, as where a lesson shows a passage. */
export function layCells(
  study: Study,
  score: Score,
  cells: readonly ScoreCell[],
  look: Look,
  width: number,
  draw: (study: Study, cellWidth: number) => Score,
  shown?: Shown,
): readonly DrawnRow[] {
  const { score: drawn, pairs } = fitScore(study, score, look, width, draw);
  const names = new Set(cells.map(c => c.name));
  const asked = drawn.cells.filter(c => names.has(c.name));
  const rows = fillRows(asked, pairs ? 2 : 1, roomOf(drawn, look, width));
  return rows.map(row => drawRow(drawn, row, look, shown));
}

/** Closer than this, in drawing units a cell, is not worth trying: 16 quavers need more. */
const closest = 150;
/** The engraver gives a cell as much more than it is asked for. */
const edge = 10;

/** The score, drawn closer where two phrases then share a row, or one then fits the paper. */
function fitScore(
  study: Study,
  score: Score,
  look: Look,
  width: number,
  draw: (study: Study, cellWidth: number) => Score,
): { readonly score: Score; readonly pairs: boolean } {
  const room = roomOf(score, look, width);
  const fits = (s: Score, cells: number): boolean =>
    s.cells.every(c => c.preludeWidth + cells * c.width <= room);
  const prelude = Math.max(0, ...score.cells.map(c => c.preludeWidth));
  const share = (cells: number): number => Math.floor((room - prelude) / cells) - edge;
  if (!look.sizes.phraseALine && score.cells.length > 1) {
    if (fits(score, 2)) return { score, pairs: true };
    const closer = share(2) < closest ? null : draw(study, share(2));
    if (closer && fits(closer, 2)) return { score: closer, pairs: true };
  }
  return { score: fits(score, 1) ? score : draw(study, share(1)), pairs: false };
}

/** The width between the margins in drawing units. */
const roomOf = (score: Score, { sizes }: Look, width: number): number =>
  (width + 0.01) / unitLength(sizes.staff, score.cells[0]?.staffSpace ?? 1);

/**
 * Cells in rows of at most `full` full ones, and a half one besides where it fits, as a second
 * ending is. A row ends with its part.
 */
function fillRows(
  cells: readonly ScoreCell[],
  full: number,
  room: number,
): readonly (readonly ScoreCell[])[] {
  const widest = Math.max(0, ...cells.map(c => c.width));
  const rows: ScoreCell[][] = [];
  for (const cell of cells) {
    const row = rows.at(-1);
    const [first] = row ?? [];
    const music = (row ?? []).reduce((sum, c) => sum + c.width, cell.width);
    const fits =
      first?.part === cell.part &&
      first.preludeWidth + music <= room &&
      music <= (full + 0.5) * widest + 0.1;
    if (row && fits) row.push(cell);
    else rows.push([cell]);
  }
  return rows;
}
