import type { Stop } from '../fingering/fingering.ts';
import { stopsOf } from '../fingering/stops-of.ts';
import { noteAt } from '../music/note-at.ts';
import { type Pitch, pitchName } from '../music/pitch.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { at, got } from '../must.ts';
import type { Dice } from './dice.ts';
import type { DrillAsk, NoDrill, StartDrill } from './drill.ts';
import { type DrillSource, gamutOf, partOf, partsFor, phraseNotes } from './drill-source.ts';

const strings: readonly number[] = [1, 2, 3, 4];
const strokes: readonly Direction[] = ['down', 'up'];

/**
 * Start anywhere: at a phrase start, the start of any bar, or on any note, by level. The note has
 * one place in first position, so that the book's fingers are the only right ones. Choices of pitch
 * are those of the tune nearest to it.
 */
export function makeStart(source: DrillSource, ask: DrillAsk, dice: Dice): StartDrill | NoDrill {
  const { tune, bowing, firstSounded } = source;
  const all = [...firstSounded.keys()].sort((a, b) => a - b);
  const placed = all.filter(onePlaceIn(source));
  const parts = partsFor(source, ask.to);
  const inPart = placed.filter(e => parts.has(partOf(tune, e)));
  const from = startsOf(source, ask.level);
  const wanted = inPart.filter(e => from === null || from.has(e));
  if (inPart.length === 0) return 'too-plain';
  const event = dice.pick(wanted.length > 0 ? wanted : inPart);
  const stop = stopAt(source, event);
  const notes = nearest(gamutOf(source, placed), source, event);
  const fingers = fingerChoices(source, placed);
  if (notes.length < 2 || fingers.length < 2) return 'too-plain';
  const { strokes: laid, strokeOf } = bowing.plan;
  const sounded = got(firstSounded.get(event), 'sounded note of the event');
  const stroke = at(laid, at(strokeOf, sounded)).direction;
  return {
    ...ask,
    kind: 'start',
    event,
    notes,
    fingers,
    strings,
    strokes,
    right: {
      note: notes.findIndex(e => midiOf(source, e) === midiOf(source, event)),
      string: strings.indexOf(stop.string),
      finger: fingers.findIndex(e => fingerText(stopAt(source, e)) === fingerText(stop)),
      stroke: strokes.indexOf(stroke),
    },
    varying: source.bowing.varying.includes(event),
  };
}

/** The stop of a note that has one pitch, within reach. */
const stopAt = ({ fingering }: DrillSource, event: number): Stop =>
  got(at(at(fingering, event), 0), 'stop of the note');

const midiOf = ({ tune }: DrillSource, event: number): number =>
  at(noteAt(tune, event).pitches, 0).midi;

const fingerText = ({ finger, semitones }: Stop): string => `${finger} ${semitones}`;

/** Whether an event is a single note with one place to stop it, the one that the book has. */
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
    const { pitches } = noteAt(source.tune, event);
    const [stop] = at(source.fingering, event);
    return pitches.length === 1 && stop !== null && places(at(pitches, 0)) === 1;
  };
}

/** Where a beginner or an improver may be asked to start; null for any note. */
function startsOf(source: DrillSource, level: DrillAsk['level']): ReadonlySet<number> | null {
  const { tune, map } = source;
  if (level === 'advanced') return null;
  if (level === 'beginner') {
    return new Set(map.phrases.flatMap(p => phraseNotes(source, p).slice(0, 1)));
  }
  return new Set(tune.bars.flatMap(b => firstNoteFrom(tune, b.first)));
}

/** The first note at an event or after it; none where only rests follow. */
function firstNoteFrom({ events }: Tune, from: number): number[] {
  const found = events.slice(from).findIndex(e => e.kind === 'note');
  return found < 0 ? [] : [from + found];
}

/** Six pitches of the tune, the true one among them and the others nearest to it, lowest first. */
function nearest(gamut: readonly number[], source: DrillSource, event: number): number[] {
  const midi = (e: number): number => midiOf(source, e);
  return [...gamut]
    .sort((a, b) => Math.abs(midi(a) - midi(event)) - Math.abs(midi(b) - midi(event)) || a - b)
    .slice(0, 6)
    .sort((a, b) => midi(a) - midi(b));
}

/** One event for each finger, low and high told apart, that the tune uses, in the hand's order. */
function fingerChoices(source: DrillSource, events: readonly number[]): number[] {
  const byFinger = new Map(events.map(e => [fingerText(stopAt(source, e)), e] as const));
  const order = (e: number): number => {
    const { finger, semitones } = stopAt(source, e);
    return finger * 100 + semitones;
  };
  return [...byFinger.values()].sort((a, b) => order(a) - order(b));
}
