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
