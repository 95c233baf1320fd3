import type { Study } from '../../shared/study.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import { type DrawnRow, drawRow, type Look, type Shown } from './draw-row.ts';
import { unitLength } from './sizes.ts';

/**
 * Arranges a tune in rows for paper. A row ends where a phrase ends. Two phrases share a row where they fit at
 * this size of staff, if necessary drawn again more closely; else each has its own. `width`: millimetres between
 * the margins.
 */
export function fitTune(
  study: Study,
  score: Score,
  look: Look,
  width: number,
  draw: (study: Study, cellWidth: number) => Score,
  shown?: Shown,
): readonly DrawnRow[] {
  return fitCells(study, score, score.cells, look, width, draw, shown);
}

/** Arranges some cells of a tune in rows, for a passage that a lesson shows. See `fitTune`. */
export function fitCells(
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

/** Least width of a cell that is tried, in drawing units: 16 quavers need more. */
const closest = 150;
/** Drawing units that the engraver adds to the width asked for. */
const edge = 10;

/** Least width of a phrase, in drawing units, at which two phrases and an ending in a row can be read. */
const closestWithEnding = 235;
/** Most that a phrase is widened, as a multiple of its natural width: beyond, its notes no longer look connected. */
const widest = 1.3;

/**
 * Draws the score at the width that needs the fewest rows: unchanged, or more closely where two phrases (and an
 * ending of half a phrase, where the tune has one) then share a row, or where one then fits the paper. Where the
 * number of rows stays the same and there is room at the side, it is drawn wider.
 */
function fitScore(
  study: Study,
  score: Score,
  look: Look,
  width: number,
  draw: (study: Study, cellWidth: number) => Score,
): { readonly score: Score; readonly pairs: boolean } {
  const room = roomOf(score, look, width);
  const natural = Math.max(0, ...score.cells.map(c => c.width));
  const prelude = Math.max(0, ...score.cells.map(c => c.preludeWidth));
  const share = (cells: number): number => Math.floor((room - prelude) / cells) - edge;
  const pairsIn = (s: Score): number | null => {
    const rows = fillRows(s.cells, 2, room);
    return rows.some(row => row.length > 1) && rows.every(row => rowWidth(row) <= room)
      ? rows.length
      : null;
  };
  if (!look.sizes.phraseALine && score.cells.length > 1) {
    const halves = score.cells.some(c => c.width < 0.6 * natural);
    const tried = [
      ...(halves && share(2.5) >= closestWithEnding ? [share(2.5)] : []),
      Math.min(share(2), Math.floor(widest * natural)),
    ].filter(w => w >= closest && (w < natural || w > 1.05 * natural));
    const candidates = [...tried.map(w => draw(study, w)), score]
      .map(s => ({ score: s, rows: pairsIn(s) }))
      .filter((c): c is { score: Score; rows: number } => c.rows !== null);
    const fewest = Math.min(...candidates.map(c => c.rows));
    const best = candidates.find(c => c.rows === fewest);
    if (best) return { score: best.score, pairs: true };
  }
  const fits = score.cells.every(c => c.preludeWidth + c.width <= room);
  return { score: fits ? score : draw(study, share(1)), pairs: false };
}

const rowWidth = (row: readonly ScoreCell[]): number =>
  row.reduce((sum, cell) => sum + cell.width, row[0]?.preludeWidth ?? 0);

/** The width between the margins in drawing units. */
const roomOf = (score: Score, { sizes }: Look, width: number): number =>
  (width + 0.01) / unitLength(sizes.staff, score.cells[0]?.staffSpace ?? 1);

/**
 * Distributes cells over rows of at most `full` whole ones, and half a one more, such as a second ending, where
 * it fits. A new part begins a new row.
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
