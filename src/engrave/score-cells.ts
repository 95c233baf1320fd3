import type { Score, ScoreCell } from './score.ts';

/** The cells that hold any of these bars (indices), in order: for an excerpt. */
export const cellsOf = (score: Score, bars: readonly number[]): readonly ScoreCell[] =>
  score.cells.filter(cell => cell.bars.some(b => bars.includes(b)));

/** One cell's or prelude's SVG as a picture of its own, with the glyphs that it uses. */
export function standAlone(score: Score, svg: string): string {
  const used = new Set([...svg.matchAll(/href="#([^"]+)"/g)].map(m => m[1] ?? ''));
  const symbols = [...used].map(id => score.glyphs.get(id) ?? '').join('');
  return svg
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ')
    .replace('>', `><defs>${symbols}</defs>`);
}
