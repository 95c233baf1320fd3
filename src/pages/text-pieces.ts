/**
 * V8 gives a text of more than 128 KB memory of its own from the system, which takes twenty times as
 * long as to fill it; and one prime or quotation mark is enough for a text to take two bytes a sign.
 * A page with a tune is that long. So while its template is filled, long lists are held aside with
 * marks in their places, and the page is written in pieces.
 */
export type HeldTexts = string[];

/** From this many signs on a text is worth a piece of its own. */
const long = 8000;

/** The text, or where it is long, a mark in its place. */
export const held = (text: string, texts: HeldTexts): string =>
  text.length < long ? text : `\0piece ${texts.push(text) - 1}\0`;

/** A text in pieces, with what was held in the place of its marks. Markdown knows no sign `\0`. */
export function* inPieces(text: string, texts: HeldTexts): Generator<string> {
  for (const [i, piece] of text.split(/\0piece (\d+)\0/).entries()) {
    if (i % 2 === 0) yield piece;
    else yield* inPieces(texts[Number(piece)] ?? '', texts);
  }
}
