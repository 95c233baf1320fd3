import { readEscapes } from './text-escapes.ts';

/** A tune of a collection, to stand by itself. */
export interface CollectedTune {
  /** Its ABC, with the fields of the file's header put in, and its text fields in plain letters. */
  readonly abc: string;
  /** The line of the file on which it begins, from 1. */
  readonly line: number;
  /** Lines of the file's header that were put in after its first. */
  readonly headerLines: number;
}

export interface Collection {
  readonly tunes: readonly CollectedTune[];
  /** Lines of words before the first tune, which belong to none: the first of them, from 1. */
  readonly wordsBefore: number | null;
}

/**
 * Cuts a collection into its tunes, each from its `X:` to the next. Fields and directives before
 * the first `X:` are the file's header and hold for every tune (ABC 2.1, section 2.2.2): they are
 * put in after its own `X:`, where the tune's own fields come later and so win. What a blank line
 * parts from a tune stays with it: it may be music that only a stray blank line cut off.
 *
 * `text` has plain line ends. A file without any `X:` is one tune.
 */
export function splitCollection(text: string): Collection {
  const lines = text.split('\n');
  const starts = lines.flatMap((line, i) => (/^X:/.test(line) ? [i] : []));
  const first = starts[0];
  if (first === undefined) {
    const from = lines.findIndex(line => line.trim() !== '');
    const hasMusic = lines.some(line => /^K:/.test(line));
    if (!hasMusic) return { tunes: [], wordsBefore: null };
    return { tunes: [tuneOf(lines.slice(from), from + 1, [])], wordsBefore: null };
  }
  const before = lines.slice(0, first);
  const header = before.filter(line => isHeaderLine(line) && !isAboutFile(line)).map(plainField);
  const words = before.findIndex(
    line => line.trim() !== '' && !isHeaderLine(line) && !/^%/.test(line),
  );
  const tunes = starts.map((start, i) =>
    tuneOf(lines.slice(start, starts[i + 1] ?? lines.length), start + 1, header),
  );
  return { tunes, wordsBefore: words < 0 ? null : words + 1 };
}

function tuneOf(lines: readonly string[], line: number, header: readonly string[]): CollectedTune {
  const own = lines.filter(l => !isAboutFile(l)).map(plainField);
  const abc = [
    ...own.slice(0, header.length === 0 ? 0 : 1),
    ...header,
    ...own.slice(header.length === 0 ? 0 : 1),
  ];
  return { abc: abc.join('\n').trimEnd(), line, headerLines: header.length };
}

const isHeaderLine = (line: string): boolean => /^(?:[A-Za-z+]:|%%)/.test(line);

/** It speaks of the file that the tune is taken out of: its encoding, which the page does not share. */
const isAboutFile = (line: string): boolean => /^(?:%%|I:)[ \t]*abc-charset\b/.test(line);

/** Fields that hold words (ABC 2.1, section 3): their escapes become letters. */
const plainField = (line: string): string =>
  /^[ABCDFGHNORSTZ]:/.test(line) && !/^[A-G]:[|:]/.test(line) ? readEscapes(line) : line;
