import type { PageContext } from './page-context.ts';
import { type Html, html } from './render.ts';

/**
 * Drawings are most of a page, and plain ASCII, which V8 keeps a byte a sign. A page's words are not:
 * one prime or quotation mark among them, and the whole text takes two bytes a sign. A text of more
 * than 128 KB, as a page with a tune would be, gets memory of its own from the system, which takes
 * twenty times as long as to fill it. So a page's template is filled with marks in the drawings'
 * places, and the page is written in pieces.
 */

/** Holds a drawing until the page's template has been filled; the answer is its mark. */
export function holdDrawing({ drawings }: PageContext, svg: string): Html {
  return html(`\0drawing ${drawings.push(svg) - 1}\0`);
}

/** A filled template in pieces, with its drawings in their places. Markdown has no sign `\0`. */
export const putDrawings = (filled: string, { drawings }: PageContext): readonly string[] =>
  filled
    .split(/\0drawing (\d+)\0/)
    .map((piece, i) => (i % 2 === 0 ? piece : (drawings[Number(piece)] ?? '')));
