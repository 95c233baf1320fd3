import type { RawElement } from './abcjs-parse.ts';
import type { DraftEvent } from './draft-bar.ts';

/** Chord symbols, decorations, graces, slurs and tuplets, to the end of the text. */
const signsOnly = /(?:"[^"]*"|![^!\n]*!|\{[^}]*\}|\((?:\d[:\d]*)?|[.~H-Wh-w]|[ \t])+$/;

/**
 * Where a note or rest is written. abcjs leaves out of a note what stands before its last sign,
 * `"G"u(` of `"G"u(~B2`: it is what lies between the note and `reached`, the end of the element
 * before. Slurs at a rest are counted here, since abcjs loses those that open at one.
 */
export function readSpan(
  raw: RawElement,
  abc: string,
  reached: number,
): Pick<DraftEvent, 'start' | 'stop' | 'restSlurs'> {
  const [start, stop] = [raw.startChar ?? 0, raw.endChar ?? 0];
  const before = abc.slice(Math.max(Math.min(reached, start), lineStart(abc, start)), start);
  const from = before === '' ? start : start - (signsOnly.exec(before)?.[0].length ?? 0);
  const text = abc.slice(from, stop);
  const atRest = raw.rest !== undefined;
  return {
    start: from + (text.length - text.trimStart().length),
    stop: from + text.trimEnd().length,
    restSlurs: {
      opened: atRest ? (text.match(/\((?!\d)/g)?.length ?? 0) : 0,
      closed: atRest ? (raw.endSlur?.length ?? 0) : 0,
    },
  };
}

const lineStart = (abc: string, at: number): number => abc.lastIndexOf('\n', at - 1) + 1;
