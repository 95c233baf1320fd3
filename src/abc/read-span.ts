import type { RawElement } from './abcjs-parse.ts';
import type { DraftEvent } from './draft-bar.ts';
import { endAsWritten } from './for-abcjs.ts';
import type { Chunk } from './split-source.ts';

/** Chord symbols, decorations, graces, slurs and tuplets, to the end of the text. */
const signsOnly = /(?:"[^"]*"|![^!\n]*!|\{[^}]*\}|\((?:\d[:\d]*)?|[.~H-Wh-w]|[ \t])+$/;

/**
 * Finds where a note or rest is written. abcjs leaves out of a note what stands before its last sign,
 * `"G"u(` of `"G"u(~B2`: it is what lies between the note and `reached`, the end of the element
 * before, as written: graces that a slur closes after belong to the note before them. Slurs at a rest are counted here, since abcjs loses those that open at one.
 */
export function readSpan(
  raw: RawElement,
  { abc, written }: Pick<Chunk, 'abc' | 'written'>,
  reached: number,
): Pick<DraftEvent, 'start' | 'stop' | 'restSlurs'> {
  const { startChar = 0, endChar = 0 } = raw;
  const stop = endAsWritten(written, abc, endChar);
  const start = startChar < reached && reached < stop ? reached : startChar;
  const from = reached < start ? start - signsBefore(abc, reached, start) : start;
  const text = written.slice(from, stop);
  return {
    start: from + (text.length - text.trimStart().length),
    stop: from + text.trimEnd().length,
    restSlurs: raw.rest === undefined ? noSlurs : slursAt(raw, text),
  };
}

const noSlurs: DraftEvent['restSlurs'] = { opened: 0, closed: 0 };

const slursAt = (rest: RawElement, text: string): DraftEvent['restSlurs'] => ({
  opened: text.match(/\((?!\d)/g)?.length ?? 0,
  closed: rest.endSlur?.length ?? 0,
});

/** How many characters of signs stand on the line just before `start`, after `reached`. */
function signsBefore(abc: string, reached: number, start: number): number {
  const before = abc.slice(Math.max(reached, lineStart(abc, start)), start);
  return before === '' ? 0 : (signsOnly.exec(before)?.[0].length ?? 0);
}

const lineStart = (abc: string, at: number): number => abc.lastIndexOf('\n', at - 1) + 1;
