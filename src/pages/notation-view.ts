import type { Study } from '../../shared/study.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import { fitClasses, measureScore, pairCells } from './fit.ts';
import { claimId, type PageContext } from './page-context.ts';
import { type Html, html } from './render.ts';

/** Fields of `parts/notation`: a drawn tune by parts, lines and cells. */
export interface NotationView {
  /** Classes that set its size; see `fit.ts`. */
  readonly fit: string;
  readonly parts: readonly {
    /** Null where the tune's one part has no name. */
    readonly name: string | null;
    readonly lines: readonly LineView[];
  }[];
}

interface LineView {
  readonly cells: readonly CellView[];
}

interface CellView {
  /** null in an excerpt, and where the cell is already on the page. */
  readonly id: string | null;
  /** Index of its phrase in the map, for scripts. */
  readonly phrase: number;
  readonly prelude: Html;
  readonly music: Html;
  /** Phrase and bars, as the accessible name of the drawing. */
  readonly name: string;
  /** Each bar in words. */
  readonly bars: readonly string[];
}

/**
 * Shows a drawn tune, or some cells of it. An excerpt gets no ids, since links lead to the tune itself. Adds
 * the symbols of the drawing to `context`.
 */
export function notationView(
  tuneId: string,
  score: Score,
  context: PageContext,
  cells: readonly ScoreCell[] = score.cells,
  as: 'tune' | 'excerpt' = 'tune',
): NotationView {
  const { siteWords } = context.words;
  for (const [id, symbol] of score.glyphs) context.symbols.set(id, symbol);
  const view = (cell: ScoreCell): CellView => ({
    id: as === 'tune' ? claimId(context, cellId(tuneId, cell.name)) : null,
    phrase: cell.phrase,
    prelude: html(inStaffSpaces(cell.prelude, cell.preludeWidth, cell)),
    music: html(inStaffSpaces(cell.svg, cell.width, cell)),
    name: siteWords.stave(cell.label, cell.name),
    bars: cell.spoken.map(({ bar, text }) => `${siteWords.bar(bar, null)} ${text}`),
  });
  const lines = pairCells(cells);
  const parts = [...new Map(cells.map(c => [c.part, c.partName]))].map(([part, name]) => ({
    name: name === '' ? null : siteWords.part(name),
    lines: lines.filter(([first]) => first.part === part).map(line => ({ cells: line.map(view) })),
  }));
  return { fit: fitClasses(measureScore({ cells })), parts };
}

/** Cells that hold any of the events from `first` to `last`, both included. */
export const cellsOver = (
  study: Study,
  score: Score,
  { first, last }: { readonly first: number; readonly last: number },
): readonly ScoreCell[] =>
  score.cells.filter(cell =>
    cell.bars.some(b => {
      const bar = study.tune.bars[b];
      return bar !== undefined && bar.first <= last && bar.end > first;
    }),
  );

/** Id of the cell of a phrase: `the-low-tide-A1-A2`. */
export const cellId = (tuneId: string, name: string): string =>
  `${tuneId}-${name.replace(/[^A-Za-z0-9]+/g, '-')}`;

/** Adds width and height to a drawing, in `em`, of which the page makes one a staff space. */
export function inStaffSpaces(svg: string, width: number, cell: ScoreCell): string {
  const size = (units: number): string => `${Math.round((units / cell.staffSpace) * 100) / 100}em`;
  return svg.replace('<svg', `<svg width="${size(width)}" height="${size(cell.height)}"`);
}
