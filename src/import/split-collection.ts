import { readEscapes } from './text-escapes.ts';

/** A tune taken out of a collection, readable by itself. */
export interface CollectedTune {
  /** Its ABC with the fields of the file's header inserted, and the escapes in text fields decoded. */
  readonly abc: string;
  /** Its first line in the file, from 1. */
  readonly line: number;
  /** Number of header lines inserted after its first line. */
  readonly headerLines: number;
}

export interface Collection {
  readonly tunes: readonly CollectedTune[];
  /** First line, from 1, of text before the first tune, which belongs to no tune; null for none. */
  readonly wordsBefore: number | null;
}

/**
 * Splits a collection into tunes, each from its `X:` to the next. Fields and directives before the first
 * `X:` are the file's header and apply to every tune (ABC 2.1, section 2.2.2): they are inserted after
 * its `X:`, so that its own fields, which follow, take precedence. Text after a blank line stays with
 * the tune before it, since it may be music that a stray blank line cut off.
 *
 * `text` has `\n` as line ends. A file without `X:` is one tune if it has a `K:`, else none.
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

/** Whether a line states the file's encoding, which does not apply to the page. */
const isAboutFile = (line: string): boolean => /^(?:%%|I:)[ \t]*abc-charset\b/.test(line);

/** Decodes the escapes in a line that is a text field (ABC 2.1, section 3). */
const plainField = (line: string): string =>
  /^[ABCDFGHNORSTZ]:/.test(line) && !/^[A-G]:[|:]/.test(line) ? readEscapes(line) : line;
