import type { Fingering, Stop } from '../fingering/fingering.ts';
import { divide, type Fraction, fraction, fractionText, subtract } from '../music/fraction.ts';
import { beatsOf, strongBeats } from '../music/meter.ts';
import type { Performance, SoundedNote } from '../music/performance.ts';
import { diatonic } from '../music/pitch.ts';
import type { Meter, NoteEvent, Tune } from '../music/tune.ts';
import type { SectionMap } from '../sections/section-map.ts';
import type { Direction } from './bowing.ts';
import type { LeadInModel } from './lead-in-model.ts';
import { notesInSeconds, slowTempo } from './paces.ts';
import type { BowingSettings, Level, Preset } from './settings.ts';

/**
 * Why no slur may cover a junction: a repeated pitch, a treble, strings that are not adjacent, a rest or
 * breath, a sign on the second note, or the end of a phrase.
 */
export type SlurFault = 'repeated' | 'treble' | 'leap' | 'gap' | 'signed' | 'phrase-end';

/** What speaks against a slur over a junction. */
interface Junction {
  readonly fault: SlurFault | null;
  readonly rough: boolean;
}

/** A tune and everything by which its bowings are compared. */
export interface BowingContext {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly fingering: Fingering;
  readonly map: SectionMap;
  readonly settings: BowingSettings;
  /** For each event: whether it is on a strong beat; on any beat. */
  readonly strong: readonly boolean[];
  readonly onBeat: readonly boolean[];
  /** For each event: the first event of its treble; -1 where it is in none. */
  readonly trebles: readonly number[];
  /** Cache of junctions, by the events on both sides. */
  readonly judged: Map<number, Junction>;
  /** First events of phrases. */
  readonly phraseStarts: ReadonlySet<number>;
}

/** Finds beats, trebles and phrases of a tune. Costs time linear in its notes. */
export function bowingContext(
  tune: Tune,
  performance: Performance,
  fingering: Fingering,
  map: SectionMap,
  settings: BowingSettings,
): BowingContext {
  const beats = new Map<Meter, { strong: ReadonlySet<string>; beat: Fraction }>();
  const beatsIn = (meter: Meter) => {
    const known = beats.get(meter) ?? {
      strong: new Set(strongBeats(meter, tune).map(fractionText)),
      beat: beatsOf(meter, tune),
    };
    beats.set(meter, known);
    return known;
  };
  const placed = tune.events.map(event => {
    const bar = tune.bars[event.bar];
    if (!bar || event.kind !== 'note') return { strong: false, onBeat: false };
    const { meter } = bar;
    const onset =
      bar.pickup && !meter.free
        ? subtract(fraction(meter.beats, meter.unit), subtract(bar.length, event.onset))
        : event.onset;
    const { strong, beat } = beatsIn(meter);
    return { strong: strong.has(fractionText(onset)), onBeat: divide(onset, beat).d === 1 };
  });
  return {
    tune,
    performance,
    fingering,
    map,
    settings,
    strong: placed.map(p => p.strong),
    onBeat: placed.map(p => p.onBeat),
    trebles: treblesOf(tune),
    judged: new Map(),
    phraseStarts: new Set(map.phrases.map(p => p.first)),
  };
}

/** Finds the trebles of a tune: triplets on one pitch, `(3AAA`, which are played in three quick strokes. */
function treblesOf(tune: Tune): number[] {
  const trebles = tune.events.map(() => -1);
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note' || event.tuplet?.p !== 3 || !event.tuplet.opens) return;
    const three = [e, e + 1, e + 2].map(i => tune.events[i]);
    const alike = three.every(n => n?.kind === 'note' && n.tuplet && samePitches(n, event));
    if (alike) for (let i = e; i < e + 3; i++) trebles[i] = e;
  });
  return trebles;
}

const samePitches = (a: NoteEvent, b: NoteEvent): boolean =>
  a.pitches.length === b.pitches.length && a.pitches.every((p, i) => p.midi === b.pitches[i]?.midi);

/** What a bowing of some notes must meet. */
export interface LeadInAim {
  readonly start: Direction;
  readonly arrive: Direction;
  readonly level: Level;
  readonly preset: Preset;
}

/** Returns the preset of a tune: the one named, else that of its type, else one without preferences. */
export function presetOf(settings: BowingSettings, tune: Tune, name: string | null): Preset {
  return settings.presets[presetKey(settings, tune, name) ?? ''] ?? anyPreset;
}

/** Returns the key of the preset in the settings; null where none is named and the type has none. */
export const presetKey = (
  { presetFor }: Pick<BowingSettings, 'presetFor'>,
  tune: Pick<Tune, 'type'>,
  name: string | null,
): string | null => name ?? (tune.type ? (presetFor[tune.type] ?? null) : null);

/** Preset of tunes of no known type. */
const anyPreset: Preset = {
  name: 'as it comes',
  strongBeat: 'down',
  intoBeat: false,
  phraseEndsChange: true,
  longestSlur: null,
  longestStroke: null,
  pattern: null,
  pickups: null,
  slurOver: 'half-bar',
  hooks: false,
};

/**
 * Units of a model's note lengths in a whole note. Exact where 40320 (8!) is a multiple of the length's
 * denominator: halves down to a 128th, and tuplets of 3, 5, 6, 7 and 9; other lengths are rounded.
 */
export const unitsInWhole = 40320;

/**
 * Makes the model of the sounded notes from `from` to `end` (not included), written with the slurs of `joined`
 * (indexed by event). Limits: the longest slur of the preset, else of the level; the longest stroke likewise, in
 * seconds at the slow practice tempo; no slur over a repeated pitch without a grace note, over a rest or breath,
 * over strings that are not adjacent, into or out of a treble, nor over a phrase end where the preset forbids it
 * (common practice).
 */
export function leadInModel(
  context: BowingContext,
  from: number,
  end: number,
  joined: readonly boolean[],
  aim: LeadInAim,
): LeadInModel {
  const { performance, settings } = context;
  const notes = performance.notes.slice(from, end);
  const limits = settings.limits[aim.level];
  const written: boolean[] = [];
  const slurrable: boolean[] = [];
  const rough: number[] = [];
  for (let i = 1; i < notes.length; i++) {
    const before = notes[i - 1] as SoundedNote;
    const note = notes[i] as SoundedNote;
    written.push(!joined[note.event]);
    const junction = judgeJunction(context, before.event, note.event);
    slurrable.push(faultAt(context, aim.preset, junction, note) === null);
    rough.push(Number(junction.rough) + roughOver(context, aim.preset, before.event, note.event));
  }
  return {
    notes: notes.length,
    start: aim.start,
    arrive: aim.arrive,
    written,
    slurrable,
    lengths: notes.map(note => unitsOf(note.duration)),
    longestSlur: aim.preset.longestSlur ?? limits.longestSlur,
    longestStroke: unitsInSeconds(context, aim.preset.longestStroke ?? limits.longestStroke),
    strong: notes.map(note => context.strong[note.event] === true),
    onBeat: notes.map(note => context.onBeat[note.event] === true),
    rough,
    strongBeat: aim.preset.strongBeat,
    intoBeat: aim.preset.intoBeat,
  };
}

/**
 * How badly a slur over a junction suits a preset without slurs into beats: worst over a bar line, then onto a
 * beat. In a book of 1883 0.9 % of the slurred junctions go over a bar line, 4 % onto a beat
 * (counted from half of Ryan's Mammoth Collection, Boston 1883); for the rest common practice.
 */
function roughOver(
  { tune, onBeat }: BowingContext,
  preset: Preset,
  before: number,
  after: number,
): number {
  if (preset.intoBeat) return 0;
  const overBar = tune.events[before]?.bar !== tune.events[after]?.bar;
  return overBar && preset.slurOver !== 'bar' ? 4 : onBeat[after] ? 2 : 0;
}

/** Returns why no slur may join a note to the event before it; null where one may. */
export function slurFault(
  context: BowingContext,
  preset: Preset,
  before: number,
  note: Pick<SoundedNote, 'event' | 'afterGap'>,
): SlurFault | null {
  return faultAt(context, preset, judgeJunction(context, before, note.event), note);
}

function faultAt(
  context: BowingContext,
  preset: Preset,
  { fault }: Junction,
  { event, afterGap }: Pick<SoundedNote, 'event' | 'afterGap'>,
): SlurFault | null {
  if (fault !== null) return fault;
  if (afterGap) return 'gap';
  if (isSigned(context.tune, event)) return 'signed';
  return preset.phraseEndsChange && context.phraseStarts.has(event) ? 'phrase-end' : null;
}

/** Whether a note has a stroke sign, and so begins a stroke. */
const isSigned = (tune: Tune, e: number): boolean => {
  const event = tune.events[e];
  return event?.kind === 'note' && event.mark !== null;
};

const unitsOf = (length: Fraction): number => Math.round((length.n * unitsInWhole) / length.d);

function unitsInSeconds(context: BowingContext, seconds: number): number {
  const notes = notesInSeconds(slowTempo(context.tune, context.settings), seconds);
  // Tolerance for rounding, so that a stroke of exactly that length is allowed.
  return Math.floor(notes * unitsInWhole + 1e-6);
}

function judgeJunction(context: BowingContext, before: number, after: number): Junction {
  const key = before * context.tune.events.length + after;
  const known = context.judged.get(key);
  if (known) return known;
  const found = meetAt(context, before, after);
  context.judged.set(key, found);
  return found;
}

function meetAt(context: BowingContext, before: number, after: number): Junction {
  const a = context.tune.events[before];
  const b = context.tune.events[after];
  if (a?.kind !== 'note' || b?.kind !== 'note') return { fault: 'gap', rough: true };
  const stops = (e: number): readonly (Stop | null)[] => context.fingering[e] ?? [];
  const crossing = nearestGap(stops(before), stops(after), stop => stop?.string ?? null);
  const steps = nearestGap(a.pitches, b.pitches, diatonic);
  const repeated = samePitches(a, b) && b.graces.length === 0;
  const treble = context.trebles[before] !== context.trebles[after];
  const fault = repeated ? 'repeated' : treble ? 'treble' : crossing > 1 ? 'leap' : null;
  return { fault, rough: steps > 1 || crossing > 0 };
}

/** The least distance between two lists of strings or pitches; 0 where one list has no known place. */
function nearestGap<T>(
  a: readonly T[],
  b: readonly T[],
  placeOf: (member: T) => number | null,
): number {
  let least: number | null = null;
  for (const x of a) {
    for (const y of b) {
      const from = placeOf(x);
      const to = placeOf(y);
      if (from === null || to === null) continue;
      const gap = Math.abs(from - to);
      if (least === null || gap < least) least = gap;
    }
  }
  return least ?? 0;
}
