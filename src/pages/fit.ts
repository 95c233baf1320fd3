import type { Score, ScoreCell } from '../engrave/score.ts';

/**
 * Measures of a tune's notation, by which the style sheet fits it to the page. Drawings are sized in staff
 * spaces (`width="46.2em"`), and the page sets the size of one staff space as a font size: the usual size
 * where there is room, and smaller where the widest line of the tune would not fit. So all staves of a tune
 * have one size. The content policy forbids style attributes; therefore each measure is a class, which sets
 * the number that the style sheet divides by.
 */
export interface Fit {
  /** Widest cell with its prelude, in staff spaces. */
  readonly single: number;
  /** Widest line of phrases side by side. */
  readonly pair: number;
  /** Height of all those lines, the row of letters left out. */
  readonly tall: number;
}

/**
 * Staff spaces to a line at which a staff is still 7 mm high on paper with 188 mm to print on: the
 * least for players by the common rule (trade practice asks for 7.5).
 */
const roomiest = 107;

/** Height of the row of letters, which is drawn below every staff: `notation.css` closes up over it. */
const lettersRow = 1.8;

type Line<T> = readonly [T, ...T[]];

/**
 * Arranges cells in lines as on a wide page: two phrases to a line, and half a phrase more, such as a second
 * ending, where the staff stays large enough. A new part begins a new line.
 */
export function pairCells<T extends ScoreCell>(cells: readonly T[]): readonly Line<T>[] {
  const full = Math.max(0, ...cells.map(c => c.width));
  const lines: [T, ...T[]][] = [];
  for (const cell of cells) {
    const line = lines.at(-1);
    if (line && line[0].part === cell.part && fitsOn(line, cell, full)) line.push(cell);
    else lines.push([cell]);
  }
  return lines;
}

function fitsOn(line: Line<ScoreCell>, cell: ScoreCell, full: number): boolean {
  const music = line.reduce((sum, c) => sum + c.width, cell.width);
  if (music <= 2 * full) return true;
  const spaces = (line[0].preludeWidth + music) / cell.staffSpace;
  return music <= 2.6 * full && spaces <= roomiest;
}

/**
 * Width of the widest cell, and of the widest pair in a row, in staff spaces; 0 where there are no
 * cells.
 */
export function measureScore(score: Pick<Score, 'cells'>): Fit {
  const lines = pairCells(score.cells);
  const spaces = (units: number, cell: ScoreCell): number => units / cell.staffSpace;
  return {
    single: Math.max(0, ...score.cells.map(c => spaces(c.width + c.preludeWidth, c))),
    pair: Math.max(
      0,
      ...lines.map(line =>
        line.reduce((sum, c) => sum + spaces(c.width, c), spaces(line[0].preludeWidth, line[0])),
      ),
    ),
    tall: lines.reduce((sum, [first]) => sum + spaces(first.height, first) - lettersRow, 0),
  };
}

/** Classes of each measure: name, first, last, step. Measures are rounded up, so that nothing is cut off. */
const scales = [
  ['single', 8, 120, 2],
  ['pair', 8, 240, 4],
  ['tall', 10, 600, 10],
] as const;

/** Names the classes of some measures: `single-46 pair-88 tall-60`. */
export function fitClasses(fit: Fit): string {
  return scales
    .map(([name, first, last, step]) => {
      const steps = Math.ceil((fit[name] - first) / step);
      return `${name}-${Math.min(last, first + Math.max(0, steps) * step)}`;
    })
    .join(' ');
}

/** Writes the style rules of all classes that `fitClasses` can name. */
export function fitStyles(): string {
  const rules: string[] = [];
  for (const [name, first, last, step] of scales) {
    for (let n = first; n <= last; n += step) rules.push(`.${name}-${n}{--${name}:${n}}`);
  }
  return `${rules.join('\n')}\n`;
}
