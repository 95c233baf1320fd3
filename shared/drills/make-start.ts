import type { Stop } from '../fingering/fingering.ts';
import { stopsOf } from '../fingering/stops-of.ts';
import { type Pitch, pitchName } from '../music/pitch.ts';
import type { Direction } from '../music/tune.ts';
import type { Dice } from './dice.ts';
import type { DrillAsk, NoDrill, StartDrill } from './drill.ts';
import {
  type DrillSource,
  firstSounded,
  gamutOf,
  noteOf,
  partsFor,
  phraseNotes,
} from './drill-source.ts';

const strings: readonly number[] = [1, 2, 3, 4];
const strokes: readonly Direction[] = ['down', 'up'];

/**
 * Start anywhere: at a phrase start, the start of any bar, or on any note, by level. The note has
 * one place in first position, so that the book's fingers are the only right ones. Choices of pitch
 * are those of the tune nearest to it.
 */
export function makeStart(source: DrillSource, ask: DrillAsk, dice: Dice): StartDrill | NoDrill {
  const sounded = firstSounded(source);
  const all = [...sounded.keys()].sort((a, b) => a - b);
  const placed = all.filter(onePlaceIn(source));
  const parts = partsFor(source, ask.to);
  const inPart = placed.filter(e => parts.has(partOf(source, e)));
  const from = startsOf(source, ask.level);
  const wanted = inPart.filter(e => from === null || from.has(e));
  if (inPart.length === 0) return 'too-plain';
  const event = dice.pick(wanted.length > 0 ? wanted : inPart);
  const stop = stopAt(source, event);
  const notes = nearest(gamutOf(source, placed), source, event);
  const fingers = fingerChoices(source, placed);
  const k = sounded.get(event) ?? -1;
  const stroke = source.bowing.plan.strokes[source.bowing.plan.strokeOf[k] ?? -1]?.direction;
  if (!stop || !stroke || notes.length < 2 || fingers.length < 2) return 'too-plain';
  const midi = (e: number) => noteOf(source, e)?.pitches[0]?.midi;
  return {
    ...ask,
    kind: 'start',
    event,
    notes,
    fingers,
    strings,
    strokes,
    right: {
      note: notes.findIndex(e => midi(e) === midi(event)),
      string: strings.indexOf(stop.string),
      finger: fingers.findIndex(e => fingerText(stopAt(source, e)) === fingerText(stop)),
      stroke: strokes.indexOf(stroke),
    },
    varying: source.bowing.varying.includes(event),
  };
}

const stopAt = (source: DrillSource, event: number): Stop | null =>
  source.fingering[event]?.[0] ?? null;

const fingerText = (stop: Stop | null): string => (stop ? `${stop.finger} ${stop.semitones}` : '');

/** Tells a single note with one place to stop it, the one that the book has. */
function onePlaceIn(source: DrillSource): (event: number) => boolean {
  const placesOf = new Map<string, number>();
  const places = (p: Pitch): number => {
    const name = pitchName(p);
    const known = placesOf.get(name);
    if (known !== undefined) return known;
    const { length } = stopsOf(p, source.tuning);
    placesOf.set(name, length);
    return length;
  };
  return event => {
    const [only, ...others] = noteOf(source, event)?.pitches ?? [];
    return !!only && others.length === 0 && stopAt(source, event) !== null && places(only) === 1;
  };
}

const partOf = ({ tune }: DrillSource, event: number): number =>
  tune.bars[tune.events[event]?.bar ?? -1]?.part ?? -1;

/** Where a beginner or an improver may be asked to start; null for any note. */
function startsOf(source: DrillSource, level: DrillAsk['level']): ReadonlySet<number> | null {
  const { tune, map } = source;
  if (level === 'advanced') return null;
  if (level === 'beginner') {
    return new Set(map.phrases.map(p => phraseNotes(source, p)[0] ?? -1));
  }
  return new Set(tune.bars.map(b => firstNoteFrom(source, b.first)));
}

/** The first note at an event or after it; -1 where there is none. */
function firstNoteFrom(source: DrillSource, from: number): number {
  for (let e = from; e < source.tune.events.length; e++) if (noteOf(source, e)) return e;
  return -1;
}

/** Six pitches of the tune, the true one among them and the others nearest to it, lowest first. */
function nearest(gamut: readonly number[], source: DrillSource, event: number): number[] {
  const midi = (e: number): number => noteOf(source, e)?.pitches[0]?.midi ?? 0;
  return [...gamut]
    .sort((a, b) => Math.abs(midi(a) - midi(event)) - Math.abs(midi(b) - midi(event)) || a - b)
    .slice(0, 6)
    .sort((a, b) => midi(a) - midi(b));
}

/** One event for each finger, low and high told apart, that the tune uses, in the hand's order. */
function fingerChoices(source: DrillSource, events: readonly number[]): number[] {
  const byFinger = new Map(events.map(e => [fingerText(stopAt(source, e)), e] as const));
  const order = (e: number): number => {
    const stop = stopAt(source, e);
    return (stop?.finger ?? 0) * 100 + (stop?.semitones ?? 0);
  };
  return [...byFinger.values()].sort((a, b) => order(a) - order(b));
}
