import type { Nodes } from 'mdast';
import { got } from '../../shared/must.ts';
import type { Place } from '../../shared/problem.ts';

/** A file of the book as read: line ends are `\n`, a byte order mark is gone. */
export interface SourceText {
  /** From the book's folder, with forward slashes. */
  readonly file: string;
  readonly text: string;
}

/** Line ends of any system become `\n`; lines and columns stay what an editor shows. */
export const sourceText = (file: string, raw: string): SourceText => ({
  file,
  text: raw.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n'),
});

/** A place in a file; line and column count from 1. */
export const placeAt = (file: string, line: number, column: number): Place => ({
  file,
  line,
  column,
});

/**
 * Where a node stands in its file. Throws where the parser gave it no position, as it does for bare
 * addresses that it makes links of; blocks and directives always have one.
 */
export const positionOf = (node: Nodes): Position =>
  got(node.position, `position of a ${node.type}`);

type Position = NonNullable<Nodes['position']>;

/** Offset of a point in the text of its file, which the parser counts for every node it places. */
export const offsetOf = ({ offset }: Position['start']): number => got(offset, 'offset of a point');

/** The text of a node as it is written in its file. See `positionOf`. */
export function writtenText(node: Nodes, { text }: SourceText): string {
  const { start, end } = positionOf(node);
  return text.slice(offsetOf(start), offsetOf(end));
}
