import type { Score, ScoreCell } from '../engrave/score.ts';

/**
 * How notation is made to fit. Drawings are sized in staff spaces (`width="46.2em"`), and the page
 * sets the size of one staff space as a font size: comfortable where there is room, and smaller
 * where the widest line of the tune would not fit. So every staff of a tune has one size, and no
 * style attribute is needed, which the content policy forbids: the measures of a tune are classes,
 * and each class sets one number for the style sheet to divide by.
 */
export interface Fit {
  /** Widest cell with its prelude, in staff spaces. */
  readonly single: number;
  /** Widest line of two cells. */
  readonly pair: number;
  /** Height of all lines, two cells to a line. */
  readonly tall: number;
}

/** Cells of a part in twos, as they stand on a line where there is room for two. */
export function pairCells<T extends ScoreCell>(cells: readonly T[]): readonly (readonly T[])[] {
  const lines: T[][] = [];
  for (const cell of cells) {
    const line = lines.at(-1);
    if (line?.length === 1 && !cell.opensPart) line.push(cell);
    else lines.push([cell]);
  }
  return lines;
}

export function measureScore(score: Pick<Score, 'cells'>): Fit {
  const lines = pairCells(score.cells);
  const spaces = (units: number, cell: ScoreCell): number => units / cell.staffSpace;
  return {
    single: Math.max(0, ...score.cells.map(c => spaces(c.width + c.preludeWidth, c))),
    pair: Math.max(
      0,
      ...lines.map(([first, second]) =>
        first === undefined
          ? 0
          : spaces(first.width + first.preludeWidth + (second?.width ?? 0), first),
      ),
    ),
    tall: lines.reduce((sum, line) => sum + Math.max(...line.map(c => spaces(c.height, c))), 0),
  };
}

/** Steps of each measure: name, first, last, step. Rounded up, so that nothing is cut off. */
const scales = [
  ['single', 8, 120, 2],
  ['pair', 8, 240, 4],
  ['tall', 10, 600, 10],
] as const;

/** `single-46 pair-88 tall-60`. */
export function fitClasses(fit: Fit): string {
  return scales
    .map(([name, first, last, step]) => {
      const steps = Math.ceil((fit[name] - first) / step);
      return `${name}-${Math.min(last, first + Math.max(0, steps) * step)}`;
    })
    .join(' ');
}

/** The rules behind `fitClasses`. */
export function fitStyles(): string {
  const rules: string[] = [];
  for (const [name, first, last, step] of scales) {
    for (let n = first; n <= last; n += step) rules.push(`.${name}-${n}{--${name}:${n}}`);
  }
  return `${rules.join('\n')}\n`;
}
