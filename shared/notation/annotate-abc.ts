import { topPitch } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Key, NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Study } from '../study.ts';
import { noteLetter } from './note-letter.ts';
import { type PrintedStroke, printedStrokes } from './printed-strokes.ts';

/**
 * What `annotateAbc` writes: a copy of a tune's ABC with what Bowbook worked out written into it, in the signs of ABC 2.1:
 * `v` down-bow, `u` up-bow, `!1!` fingers, `"_G"` letters below. Each sign is put straight before
 * its note, after whatever the teacher wrote there: `"G"(3{a}Bcd` becomes `"G"(3{a}vBucvd`. What
 * the teacher wrote stays as it is, and a sign or finger that stands already is not written twice.
 *
 * Read again, the copy has the same notes and the same strokes. A sign in ABC speaks for every time
 * through, so a note whose stroke is not the same each time gets none.
 */
export interface AnnotateOptions {
  readonly marks: 'all' | 'changes' | 'anchors' | 'none';
  readonly fingers: boolean;
  /** Letters below the notes, named so; null for none. */
  readonly letters: NoteNames | null;
  /** Only these bars (indices, neighbours in written order), as a tune of their own. */
  readonly bars?: readonly number[];
}

/** A copy of a tune's ABC with signs written into it, from its `X:` line on. */
export function annotateAbc(study: Study, options: AnnotateOptions): string {
  const { tune } = study;
  const { text } = tune.source;
  const strokes = printedStrokes(study);
  const [from, to] = options.bars ? extentOf(tune, options.bars) : chunkOf(tune);
  const named = /^U:\s*[uv]\s*=/m.test(text);
  let out = '';
  let copied = from;
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note' || event.start < from || event.stop > to) return;
    const at = noteOffset(text, event.start, event.stop);
    out += text.slice(copied, at) + signsOf(study, event, e, strokes.get(e), named, options);
    copied = at;
  });
  out += text.slice(copied, to);
  return options.bars ? `${headerOf(tune, options.bars)}${out.trim()}|\n` : out;
}

/** The signs to put before one note; empty for none. */
function signsOf(
  { tune, fingering }: Study,
  event: NoteEvent,
  index: number,
  stroke: PrintedStroke | undefined,
  named: boolean,
  options: AnnotateOptions,
): string {
  const parts: string[] = [];
  const { key } = at(tune.bars, event.bar);
  if (options.letters) parts.push(`"_${noteLetter(topPitch(event), key, options.letters)}"`);
  if (options.fingers && event.fingers.length === 0) {
    for (const stop of at(fingering, index)) if (stop) parts.push(`!${stop.finger}!`);
  }
  if (stroke && event.mark === null && !stroke.varies && isWanted(stroke, options.marks)) {
    if (named) parts.push(stroke.direction === 'down' ? '!downbow!' : '!upbow!');
    else parts.push(stroke.direction === 'down' ? 'v' : 'u');
  }
  return parts.join('');
}

function isWanted({ weight }: PrintedStroke, marks: AnnotateOptions['marks']): boolean {
  if (marks === 'all') return true;
  if (marks === 'changes') return weight !== 'all';
  return marks === 'anchors' && weight === 'anchor';
}

/** What may stand before a note: words, graces, signs, tuplets, slurs, fields, space. */
const beforeNote =
  /"[^"\n]*"|\{[^}\n]*\}|![^!\n]*!|\+[^+\n]*\+|\[[A-Za-z]:[^\]]*\]|\(\d+(?::\d*){0,2}|\.?\(|[<>]+|[\s.~uvH-Yh-w`-]/y;

/**
 * Offset of the note itself, its accidental or the bracket of its chord. Where a slip such as a
 * quotation left open makes all of the span look like signs, it is the span's own start.
 */
function noteOffset(text: string, start: number, stop: number): number {
  let at = start;
  while (at < stop) {
    beforeNote.lastIndex = at;
    const found = beforeNote.exec(text);
    if (!found) return at;
    at += found[0].length;
  }
  return start;
}

/** From the `X:` of the tune to the next tune, a blank line or the end. */
function chunkOf(tune: Tune): readonly [number, number] {
  const { text } = tune.source;
  const first = at(tune.events, 0).start;
  const last = at(tune.events, tune.events.length - 1).stop;
  const start = [...text.slice(0, first).matchAll(/^X:/gm)].at(-1)?.index ?? 0;
  const rest = text.slice(last).search(/\n[ \t]*(?:\n|$)|\nX:/);
  return [start, rest < 0 ? text.length : last + rest + 1];
}

/** From the first to the last character of some bars. */
function extentOf(tune: Tune, bars: readonly number[]): readonly [number, number] {
  const events = bars.flatMap(b => {
    const { first, end } = at(tune.bars, b);
    return tune.events.slice(first, end);
  });
  return [at(events, 0).start, at(events, events.length - 1).stop];
}

/** The header of a tune that is some bars of another. */
function headerOf(tune: Tune, bars: readonly number[]): string {
  const { meter: own, key } = at(tune.bars, at(bars, 0));
  const { beats, unit, free } = own;
  const meter = free ? 'none' : `${beats}/${unit}`;
  return `X:1\nM:${meter}\nL:${tune.unit.n}/${tune.unit.d}\nK:${keyText(tune, key)}\n`;
}

/** The teacher's own words for the key where it is the tune's, else tonic and mode. */
function keyText(tune: Tune, key: Key): string {
  const [start, end] = chunkOf(tune);
  const written = /^K:\s*([^%\n]*)/m.exec(tune.source.text.slice(start, end))?.[1]?.trim();
  if (written && JSON.stringify(key) === JSON.stringify(tune.key)) return written;
  return key.mode === 'none' ? 'none' : `${key.tonic} ${key.mode}`;
}
