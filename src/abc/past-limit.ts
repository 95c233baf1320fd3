import { limits } from '../../shared/limits.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import type { FactsOf } from '../../shared/rules.ts';
import type { RawElement, RawTune } from './abcjs-parse.ts';
import type { Locate } from './locate.ts';
import type { Chunk } from './split-source.ts';

type Excess = FactsOf<'tune-past-limit'>['what'];

/** The problem of a text that is too much for the parser; null where it can be given to it. */
export function textPastLimit(chunk: Chunk, locate: Locate): Problem | null {
  const { abc } = chunk;
  const past = (what: Excess, found: number, most: number, at: number): Problem =>
    tooMuch(what, found, most, chunk, locate, at);
  if (abc.length > limits.tuneLength) return past('length', abc.length, limits.tuneLength, 0);
  // abcjs makes something of every beat of a bar, and would fill the memory with them.
  const meter = /(?:^|\[)M:[^\]\n]*?(\d{4,})/m.exec(abc);
  if (meter) return past('meter', Number(meter[1]), limits.beats, meter.index);
  let at = 0;
  for (const line of abc.split('\n')) {
    if (line.length > limits.tuneLine) return past('line', line.length, limits.tuneLine, at);
    at += line.length + 1;
  }
  return null;
}

/**
 * The problem of a parsed tune that has too much of something to be studied, or a length that is no
 * number, as `A/0` has; null where there is nothing of the kind.
 */
export function musicPastLimit(raw: RawTune, chunk: Chunk, locate: Locate): Problem | null {
  let notes = 0;
  for (const element of raw.lines.flatMap(line => line.staff?.[0]?.voices[0] ?? [])) {
    if (element.el_type !== 'note') continue;
    notes += 1;
    const fault =
      notes > limits.notes
        ? (['notes', notesOf(raw), limits.notes] as const)
        : elementPastLimit(element);
    if (fault) return tooMuch(...fault, chunk, locate, element.startChar ?? 0);
  }
  return null;
}

function elementPastLimit(
  element: RawElement,
): readonly [what: Excess, found: number, most: number] | null {
  const isLong = element.rest?.type.includes('multimeasure') ?? false;
  const bars = element.rest?.text ?? 1;
  if (isLong && !(bars <= limits.restBars)) return ['rest-bars', bars, limits.restBars];
  const length = element.duration ?? 0;
  if (!isLong && !(length >= 0 && length <= limits.noteLength)) {
    return ['note-length', 0, limits.noteLength];
  }
  const chord = element.pitches?.length ?? 0;
  if (chord > limits.chord) return ['chord', chord, limits.chord];
  const graces = element.gracenotes?.length ?? 0;
  return graces > limits.graces ? ['graces', graces, limits.graces] : null;
}

const notesOf = (raw: RawTune): number =>
  raw.lines
    .flatMap(line => line.staff?.[0]?.voices[0] ?? [])
    .filter(element => element.el_type === 'note').length;

const tooMuch = (
  what: Excess,
  found: number,
  most: number,
  chunk: Chunk,
  locate: Locate,
  at: number,
): Problem =>
  problem('tune-past-limit', locate(chunk.offset(at)), {
    facts: { what, found, most },
  });
