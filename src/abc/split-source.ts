import { forAbcjs } from './for-abcjs.ts';

/**
 * One tune of a source. A source may hold several, each from its `X:` to the next. Lines of fields before the
 * first `X:` are the file header and hold for every tune (ABC 2.1, section 2.2.2): they are put in
 * after the tune's own `X:` line, so that abcjs reads them as the tune's.
 */
export interface Chunk {
  /** The tune as written, the file's header put in. */
  readonly written: string;
  /** What abcjs is given; as long as `written`. */
  readonly abc: string;
  /** The offset in the source of an offset in `abc`. */
  readonly offset: (inAbc: number) => number;
  /** The line of the source, from 0, of a line of `abc`, from 0. */
  readonly line: (inAbc: number) => number;
  /** Music after a blank line, which ends a tune: its offset in the source; null without any. */
  readonly strayMusic: number | null;
}

const headerLine = /^(?:[A-Za-z+]:|%%).*\n?/gm;

/** Cuts a source into its tunes; a source without `X:` is one tune, an empty one none. */
export function splitSource(text: string): readonly Chunk[] {
  const starts = [...text.matchAll(/^X:/gm)].map(m => m.index);
  const first = starts[0];
  if (first === undefined) return text.trim() === '' ? [] : [chunk(text, 0, text.length, '', 0)];
  const header = [...text.slice(0, first).matchAll(headerLine)].map(m => m[0]).join('');
  let line = 0;
  return starts.map((start, i) => {
    line += countLines(text.slice(starts[i - 1] ?? 0, start));
    return chunk(text, start, starts[i + 1] ?? text.length, header, line);
  });
}

/** The tune from `start`, which stands on that line, up to `end`. */
function chunk(text: string, start: number, end: number, header: string, startLine: number): Chunk {
  const body = text.slice(start, end);
  const lead = body.length - body.replace(/^(?:[ \t]*\n)+/, '').length;
  const blank = body.slice(lead).search(/\n[ \t]*\n/);
  const stop = blank < 0 ? body.length : lead + blank + 1;
  const own = body.slice(lead, stop);
  const cut = header === '' ? 0 : own.indexOf('\n') + 1;
  const from = start + lead;
  const written = own.slice(0, cut) + header + own.slice(cut);
  const firstLine = startLine + countLines(body.slice(0, lead));
  const headerLines = countLines(header);
  const stray = text.slice(start + stop, end).search(/^(?![A-Za-z]:|%).*\|/m);
  return {
    written,
    abc: forAbcjs(written),
    offset: at => from + (at < cut ? at : Math.max(cut, at - header.length)),
    line: at => firstLine + (cut === 0 || at === 0 ? at : Math.max(1, at - headerLines)),
    strayMusic: stray < 0 ? null : start + stop + stray,
  };
}

const countLines = (text: string): number => text.split('\n').length - 1;
