import abcjs from 'abcjs';

/**
 * The parts of the parse by abcjs that Bowbook reads; no other file calls its parser. As they are in
 * abcjs 6.7 (its own types leave most of them out).
 */
export interface RawTune {
  readonly metaText: RawMeta;
  readonly warnings?: readonly string[];
  readonly lines: readonly RawLine[];
}

export interface RawMeta {
  readonly title?: string;
  readonly rhythm?: string;
  readonly composer?: unknown;
  readonly origin?: unknown;
  readonly source?: unknown;
  readonly book?: unknown;
  readonly transcription?: unknown;
  readonly notes?: unknown;
  readonly partOrder?: unknown;
  readonly tempo?: { readonly duration?: readonly number[]; readonly bpm?: number };
}

export interface RawLine {
  readonly subtitle?: { readonly text: string };
  readonly staff?: readonly RawStaff[];
}

export interface RawStaff {
  readonly clef?: { readonly type?: string };
  readonly key?: RawKey;
  readonly meter?: RawMeter;
  readonly voices: readonly (readonly RawElement[])[];
}

export interface RawKey {
  readonly root?: string;
  readonly acc?: string;
  readonly mode?: string;
  readonly accidentals?: readonly { readonly acc: string; readonly note: string }[];
}

export interface RawMeter {
  readonly type?: string;
  readonly value?: readonly { readonly num: string; readonly den?: string }[];
}

export interface RawPitch {
  /** Staff steps above middle C. */
  readonly pitch: number;
  readonly accidental?: string;
  readonly startTie?: object;
  readonly startSlur?: readonly unknown[];
  readonly endSlur?: readonly unknown[];
}

/** A note, rest, bar line or change, told apart by `el_type`. */
export interface RawElement extends RawKey, RawMeter {
  readonly el_type: string;
  readonly startChar?: number;
  readonly endChar?: number;
  readonly title?: string;
  readonly duration?: number;
  readonly pitches?: readonly RawPitch[];
  readonly gracenotes?: readonly RawPitch[];
  readonly rest?: { readonly type: string; readonly text?: number };
  readonly decoration?: readonly string[];
  readonly startTriplet?: number;
  readonly tripletMultiplier?: number;
  readonly endTriplet?: boolean;
  readonly startSlur?: readonly unknown[];
  readonly endSlur?: readonly unknown[];
  readonly lyric?: readonly { readonly syllable: string }[];
  readonly chord?: readonly { readonly name: string; readonly position?: string }[];
  readonly startEnding?: string;
  readonly endEnding?: boolean;
}

/** Why abcjs gave up on a tune, and the line, from 0, that it could not get past. */
export interface ParseFailure {
  readonly failure: string;
  readonly line: number;
}

/**
 * Parses one tune with abcjs. Never throws: abcjs does on some slips, `[!e` among them, and then the
 * line is looked for by parsing the text up to it, in about log₂ of its lines more parses.
 */
export function parseWithAbcjs(abc: string): RawTune | ParseFailure {
  const parsed = tryParse(abc);
  if (typeof parsed !== 'string') return parsed;
  const lines = abc.split('\n');
  // By halves: a long tune has many lines, and each look is a parse.
  let [read, unread] = [0, lines.length];
  while (unread - read > 1) {
    const half = (read + unread) >> 1;
    if (typeof tryParse(lines.slice(0, half).join('\n')) === 'string') unread = half;
    else read = half;
  }
  return { failure: parsed, line: read };
}

/** The last text parsed: a tune is mostly drawn just after it is read, from the same text. */
let last: { readonly abc: string; readonly tunes: readonly RawTune[] } = { abc: '', tunes: [] };

/** Parses all tunes of a text with abcjs; may throw. The last text's parse is kept and given out again. */
export function parseAll(abc: string): readonly RawTune[] {
  if (last.abc !== abc) {
    last = { abc, tunes: abcjs.parseOnly(abc) as unknown as readonly RawTune[] };
  }
  return last.tunes;
}

/** The parse, or the reason as text where there is none. */
function tryParse(abc: string): RawTune | string {
  try {
    const [tune] = parseAll(abc);
    return tune ?? 'nothing was found to read';
  } catch (fault) {
    return fault instanceof Error ? fault.message : String(fault);
  }
}

/** What abcjs says about a place in the text it was given. */
export interface RawWarning {
  /** From 0. */
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/**
 * Takes apart `Music Line:20:39: Unknown decoration: weird:  ccc<span …>!</span>weird!`: line from
 * 1, column from 1, the message, then the whole line with the place marked in HTML.
 */
export function readWarning(warning: string): RawWarning {
  const m = /^Music Line:(-?\d+):(-?\d+): (.*)$/s.exec(warning);
  const text = m?.[3] ?? warning;
  const marked = /<span[^>]*>(.*?)<\/span>/s.exec(text)?.[1];
  const message = (text.split(/: {2}/)[0] ?? text).replace(/<\/?span[^>]*>/g, '').trim();
  return {
    line: Math.max(0, Number(m?.[1] ?? 1) - 1),
    column: Math.max(0, Number(m?.[2] ?? 1) - 1),
    text: unescapeHtml(marked && /ignored/.test(message) ? `${message}: ${marked}` : message),
  };
}

const unescapeHtml = (text: string): string =>
  text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&');
