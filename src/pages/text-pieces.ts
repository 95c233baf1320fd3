import { randomUUID } from 'node:crypto';

/**
 * V8 gives a text of more than 128 KB memory of its own from the system, which takes twenty times as
 * long as to fill it; and one prime or quotation mark is enough for a text to take two bytes a sign.
 * A page with a tune is that long. So while its template is filled, long lists are held aside with
 * marks in their places, and the page is written in pieces.
 */
export type HeldTexts = string[];

/** Another at each start, so that no text of a book can hold a mark. */
const sign = randomUUID();
const mark = `[${sign} `;

/** From this many signs on a text is worth a piece of its own. */
const long = 8000;

/** The text, or where it is long, a mark in its place. */
export const held = (text: string, texts: HeldTexts): string =>
  text.length < long ? text : `${mark}${texts.push(text) - 1}]`;

/** A text in pieces, with what was held in the place of its marks. */
export function* inPieces(text: string, texts: HeldTexts): Generator<string> {
  // Not by a regular expression: V8 holds on to the last text that one was tried on.
  const [first = '', ...others] = text.split(mark);
  yield first;
  for (const piece of others) {
    const end = piece.indexOf(']');
    yield* inPieces(texts[Number(piece.slice(0, end))] ?? '', texts);
    yield piece.slice(end + 1);
  }
}
