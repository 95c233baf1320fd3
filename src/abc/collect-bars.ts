import { add, type Fraction, fromFloat, multiply, zero } from '../../shared/music/fraction.ts';
import { meterLength } from '../../shared/music/meter.ts';
import { diatonic, type Pitch } from '../../shared/music/pitch.ts';
import type { RawElement, RawPitch, RawTune } from './abcjs-parse.ts';
import type { DraftBar, DraftEvent } from './draft-bar.ts';
import { readBarLine } from './read-bar-line.ts';
import { readKey, readMeter } from './read-key.ts';
import {
  afterBarLine,
  noAccidentals,
  propagationOf,
  type ReadPitch,
  readClef,
  readPitch,
} from './read-pitch.ts';
import { readSpan } from './read-span.ts';
import type { Chunk } from './split-source.ts';
import { tupletRatio } from './tuplet-ratio.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * Walks abcjs's elements in the order of the page and gathers them into bars. What a bar is called
 * and which part it belongs to comes later (`nameBars`). Of several voices, the first is read.
 *
 * A bar runs from bar line to bar line, over line ends, and stops too where an ending begins in
 * mid-bar and where a `P:` stands. Signs that meet without a note between them (`:|` at the end of
 * a line, `|:` at the start of the next) are gathered: what closes goes to the bar before, what
 * opens to the bar after. `chunk` has the text that abcjs was given.
 */
export function collectBars(
  tune: RawTune,
  chunk: Pick<Chunk, 'abc' | 'written'>,
): readonly DraftBar[] {
  const { abc } = chunk;
  const bars: Mutable<DraftBar>[] = [];
  const propagation = propagationOf(abc);
  let key = readKey(undefined);
  let meter = readMeter(undefined);
  let clef = readClef(undefined);
  let accidentals = noAccidentals;
  let tuplet: { p: number; ratio: Fraction; begun: boolean } | null = null;
  let reached = 0;
  let opening: Opening = plainOpening;
  let events: DraftEvent[] | null = null;

  const place = (event: DraftEvent): void => {
    if (events === null) {
      events = [];
      const { opensRepeat, opensEnding, partName } = opening;
      bars.push({
        meter,
        key,
        clef,
        events,
        length: event.duration,
        opensRepeat,
        closesRepeat: 1,
        closesPart: false,
        opensEnding,
        closesEnding: false,
        partName,
        closed: false,
        start: event.start,
      });
      opening = plainOpening;
    } else {
      const bar = bars[bars.length - 1] as Mutable<DraftBar>;
      bar.length = add(bar.length, event.duration);
    }
    events.push(event);
  };

  const closeBar = (line: RawElement): void => {
    const sign = readBarLine(line, abc);
    events = null;
    const bar = bars.at(-1);
    if (bar) {
      bar.closed ||= sign.drawn;
      bar.closesRepeat = Math.max(bar.closesRepeat, sign.closesRepeat);
      bar.closesPart ||= sign.closesPart;
      bar.closesEnding ||= sign.closesEnding;
    }
    if (sign.opensRepeat || sign.opensEnding) {
      opening = {
        opensRepeat: opening.opensRepeat || sign.opensRepeat,
        opensEnding: sign.opensEnding ?? opening.opensEnding,
        partName: opening.partName,
      };
    }
    if (sign.drawn) accidentals = afterBarLine(accidentals);
  };

  const read = (raw: RawPitch): ReadPitch => {
    const found = readPitch(raw, accidentals, { key, octaves: clef.octave, propagation });
    accidentals = found.after;
    return found;
  };

  const placeNote = (raw: RawElement): void => {
    if (raw.startTriplet) {
      tuplet = { p: raw.startTriplet, ratio: tupletRatio(raw, abc, meter), begun: false };
    }
    const length = fromFloat(raw.duration ?? 0);
    const graces = raw.gracenotes?.map(g => read(g).pitch) ?? [];
    const found = raw.pitches?.map(read) ?? [];
    if (accidentals.tied.size > 0 || raw.pitches?.some(p => p.startTie !== undefined)) {
      const tied = found.filter((_, i) => raw.pitches?.[i]?.startTie !== undefined);
      const alters = tied.map(({ pitch }) => [diatonic(pitch), pitch.alter] as const);
      accidentals = { ...accidentals, tied: new Map(alters) };
    }
    const doubtful = found.find(f => f.otherwise !== null);
    const { start, stop, restSlurs } = readSpan(raw, chunk, reached);
    reached = stop;
    place({
      raw,
      rest: raw.rest !== undefined || found.length === 0,
      onset: events === null ? zero : (bars.at(-1)?.length ?? zero),
      duration: tuplet ? multiply(length, tuplet.ratio) : length,
      pitches: lowestFirst(found.map(f => f.pitch)),
      graces,
      tuplet: tuplet && { p: tuplet.p, opens: !tuplet.begun },
      start,
      stop,
      restSlurs,
      elsewhere: doubtful?.otherwise
        ? { read: doubtful.pitch, otherwise: doubtful.otherwise }
        : null,
    });
    if (tuplet) tuplet.begun = true;
    if (raw.endTriplet) tuplet = null;
  };

  /** `Z2` is two bars, though no bar line is written between them. */
  const placeRests = (raw: RawElement, length: Fraction): void => {
    const rest = { raw, rest: true, onset: zero, duration: length, pitches: [], graces: [] };
    for (let i = 0; i < (raw.rest?.text ?? 1); i++) {
      events = null;
      place({ ...rest, ...readSpan(raw, chunk, reached), tuplet: null, elsewhere: null });
    }
  };

  for (const { staff } of tune.lines) {
    const first = staff?.[0];
    if (!first) continue;
    clef = readClef(first.clef?.type);
    if (first.key) key = readKey(first.key);
    if (first.meter) meter = readMeter(first.meter);
    for (const raw of first.voices[0] ?? []) {
      const kind = raw.rest?.type ?? '';
      if (raw.el_type === 'key') key = readKey(raw);
      else if (raw.el_type === 'clef') clef = readClef(raw.type);
      else if (raw.el_type === 'meter') meter = readMeter(raw);
      else if (raw.el_type === 'bar') closeBar(raw);
      else if (raw.el_type === 'part') {
        events = null;
        opening = { ...opening, partName: raw.title ?? null };
      } else if (raw.el_type === 'note' && kind !== 'spacer') {
        const full = kind.includes('multimeasure') ? meterLength(meter) : null;
        if (full) placeRests(raw, full);
        else placeNote(raw);
      }
      reached = Math.max(reached, raw.endChar ?? 0);
    }
  }
  return bars;
}

const lowestFirst = (pitches: Pitch[]): Pitch[] =>
  pitches.length > 1 ? pitches.sort((a, b) => a.midi - b.midi) : pitches;

type Opening = Pick<DraftBar, 'opensRepeat' | 'opensEnding' | 'partName'>;

const plainOpening: Opening = { opensRepeat: false, opensEnding: null, partName: null };
