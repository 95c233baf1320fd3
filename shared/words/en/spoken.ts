import { asIfStandard } from '../../fingering/as-if-standard.ts';
import type { Stop, Tuning } from '../../fingering/fingering.ts';
import { fiddleTuning } from '../../fingering/tunings.ts';
import type { Pitch } from '../../music/pitch.ts';
import type { Direction, NoteEvent } from '../../music/tune.ts';
import type { Study } from '../../study.ts';

/**
 * A tune said aloud, for those who do not read notation and for screen readers: note, string,
 * finger and stroke.
 */

/** "F sharp", "B flat", "C". Double signs are spoken as such. */
export const spokenPitch = (p: Pitch): string => p.letter + (signs[p.alter + 2] ?? '');

/** From a double flat up. */
const signs = [' double flat', ' flat', '', ' sharp', ' double sharp'] as const;

/**
 * Which of its octaves a note is in, counted from the fiddle's lowest string: G3 to F4 sharp is
 * low, G4 to F5 sharp is middle, from G5 high.
 */
export const register = (p: Pitch): 'low' | 'middle' | 'high' =>
  p.midi < 67 ? 'low' : p.midi < 79 ? 'middle' : 'high';

/**
 * Names of the strings from string 1 (the highest): "E", "A", "D", "G". Where two strings have the
 * same letter they are told apart: AEAE has "high E", "high A", "low E", "low A"; a third of the
 * same letter is "middle".
 */
export function stringNames(tuning: Tuning): readonly string[] {
  const known = namesOfStrings.get(tuning);
  if (known) return known;
  const letters = tuning.map(spokenPitch);
  const names = letters.map((name, i) => {
    const alike = letters.flatMap((n, at) => (n === name ? [at] : []));
    if (alike.length === 1) return name;
    const place = i === alike[0] ? 'high' : i === alike.at(-1) ? 'low' : 'middle';
    return `${place} ${name}`;
  });
  namesOfStrings.set(tuning, names);
  return names;
}

/** Asked for with every note of a book, and always for the same few tunings. */
const namesOfStrings = new WeakMap<Tuning, readonly string[]>();

/** By finger, then semitones above the open string (common practice). */
const fingerNames: readonly Readonly<Record<number, string>>[] = [
  { 0: 'open' },
  { 1: 'low 1', 2: '1', 3: 'high 1' },
  { 2: 'very low 2', 3: 'low 2', 4: 'high 2', 5: 'very high 2' },
  { 4: 'low 3', 5: '3', 6: 'high 3' },
  { 6: 'low 4', 7: '4', 8: 'high 4' },
];

/** "high 2", "3", "open". */
export const spokenFinger = (stop: Stop): string =>
  fingerNames[stop.finger]?.[stop.semitones] ?? `${stop.finger}`;

/** "high 2 on D", "open A"; a pitch without a stop is "out of first position". */
export function spokenStop(stop: Stop | null, tuning: Tuning = fiddleTuning): string {
  if (!stop) return 'out of first position';
  const string = stringNames(tuning)[stop.string - 1] ?? `string ${stop.string}`;
  return stop.finger === 0 ? `open ${string}` : `${spokenFinger(stop)} on ${string}`;
}

/**
 * "as if A": on a retuned string, the note that the finger would give on a fiddle as it comes; null
 * where the string is as it comes, or the note out of reach.
 */
export function asIfWords(p: Pitch, stop: Stop | null, tuning: Tuning): string | null {
  const open = stop && tuning[stop.string - 1];
  if (!stop || !open || open.midi === fiddleTuning[stop.string - 1]?.midi) return null;
  return `as if ${spokenPitch(asIfStandard(p, stop, tuning))}`;
}

/**
 * "F sharp, high 2 on D, down"; on a retuned string "B, 1 on low A, as if A, down". Without a
 * direction the stroke is left out.
 */
export function spokenNote(
  stop: Stop | null,
  pitch: Pitch,
  direction: Direction | null,
  tuning: Tuning = fiddleTuning,
): string {
  const asIf = asIfWords(pitch, stop, tuning);
  const words = [spokenPitch(pitch), spokenStop(stop, tuning), ...(asIf ? [asIf] : [])];
  return (direction ? [...words, direction] : words).join(', ');
}

export interface SpokenPart {
  readonly part: string;
  readonly bars: readonly SpokenBar[];
}

export interface SpokenBar {
  readonly name: string;
  /** Label of the phrase that begins with this bar. */
  readonly phrase: string | null;
  readonly notes: readonly SpokenNote[];
  /** The bar as a sentence, its notes gathered by stroke. */
  readonly text: string;
}

export interface SpokenNote {
  /** Event index. */
  readonly event: number;
  /** "F sharp"; a double stop is "D and A". */
  readonly name: string;
  readonly register: 'low' | 'middle' | 'high';
  /** "D", "low E"; null out of first position. A double stop names both. */
  readonly string: string | null;
  /** "high 2", "open". */
  readonly finger: string | null;
  /** "as if A" on a retuned string, else null. */
  readonly asIf: string | null;
  /** On the first time through; null where the note is never played. */
  readonly stroke: Direction | null;
  /** On the same stroke as the note before it. */
  readonly slurred: boolean;
  /** Tied on from the note before it: not sounded anew. */
  readonly held: boolean;
  /** The stroke is another one on another time through. */
  readonly varying: boolean;
}

/** The whole tune in words, part by part and bar by bar as written. */
export function speakTune(study: Study): readonly SpokenPart[] {
  const { tune, tuning, map } = study;
  const sound = firstSounds(study);
  const varying = new Set(study.bowing.varying);
  const opens = new Map(map.phrases.map(p => [p.bars[0], p.label]));
  return tune.parts.map(part => ({
    part: part.name,
    bars: part.bars.flatMap(index => {
      const bar = tune.bars[index];
      if (!bar) return [];
      const said: Said[] = [];
      for (let event = bar.first; event < bar.end; event++) {
        const e = tune.events[event];
        if (e?.kind === 'rest') said.push('rest');
        if (e?.kind !== 'note') continue;
        said.push(speakEvent(study, e, event, tuning, sound.get(event), varying.has(event)));
      }
      const notes = said.flatMap(s => (s === 'rest' ? [] : [s.note]));
      return [{ name: bar.name, phrase: opens.get(index) ?? null, notes, text: barText(said) }];
    }),
  }));
}

/** A sounded note as the first time through plays it. */
interface Sound {
  readonly stroke: number;
  readonly direction: Direction;
  readonly slurred: boolean;
  readonly held: boolean;
  readonly retake: boolean;
}

type Said =
  | 'rest'
  | { readonly note: SpokenNote; readonly where: string; readonly sound: Sound | null };

function firstSounds({ performance, bowing }: Study): ReadonlyMap<number, Sound> {
  const sounds = new Map<number, Sound>();
  performance.notes.forEach((n, i) => {
    const stroke = bowing.plan.strokeOf[i];
    const s = stroke === undefined ? undefined : bowing.plan.strokes[stroke];
    if (stroke === undefined || !s) return;
    const slurred = s.notes[0] !== i;
    const sound = { stroke, direction: s.direction, slurred, held: false, retake: s.retake };
    if (!sounds.has(n.event)) sounds.set(n.event, sound);
    for (const tied of n.tied) {
      if (!sounds.has(tied)) sounds.set(tied, { ...sound, slurred: true, held: true });
    }
  });
  return sounds;
}

function speakEvent(
  study: Study,
  e: NoteEvent,
  event: number,
  tuning: Tuning,
  sound: Sound | undefined,
  varying: boolean,
): Exclude<Said, 'rest'> {
  const names = stringNames(tuning);
  const stops = e.pitches.map((_, i) => study.fingering[event]?.[i] ?? null);
  const known = stops.flatMap(s => (s ? [s] : []));
  const all = known.length === stops.length;
  const top = e.pitches.at(-1);
  const asIf = e.pitches.flatMap((p, i) => asIfWords(p, stops[i] ?? null, tuning) ?? []);
  const note: SpokenNote = {
    event,
    name: e.pitches.map(spokenPitch).join(' and '),
    register: top ? register(top) : 'middle',
    string: all ? known.map(s => names[s.string - 1]).join(' and ') : null,
    finger: all ? known.map(spokenFinger).join(' and ') : null,
    asIf: asIf.length > 0 ? asIf.join(' and ') : null,
    stroke: sound?.direction ?? null,
    slurred: sound?.slurred ?? false,
    held: sound?.held ?? false,
    varying,
  };
  const where = e.pitches
    .map((p, i) => spokenNote(stops[i] ?? null, p, null, tuning))
    .join(' together with ');
  return { note, where, sound: sound ?? null };
}

/**
 * "Down: G, 3 on D; A, open A. Up: B, 1 on A." A stroke that began in the bar before goes on: "Still
 * down: …". A bow that is lifted and starts again the same way: "Down again: …".
 */
function barText(said: readonly Said[]): string {
  const groups: { head: string; words: string[] }[] = [];
  let stroke: number | null = null;
  for (const s of said) {
    if (s === 'rest') {
      groups.push({ head: '', words: ['Rest'] });
      continue;
    }
    const words = s.note.held ? `${s.note.name}, held` : s.where;
    const last = groups.at(-1);
    if (last && s.sound && s.sound.stroke === stroke && last.head !== '') last.words.push(words);
    else groups.push({ head: strokeHead(s.sound), words: [words] });
    stroke = s.sound?.stroke ?? null;
  }
  const text = groups.map(g => (g.head ? `${g.head}: ` : '') + g.words.join('; ')).join('. ');
  const turned = said.some(s => s !== 'rest' && s.note.varying);
  if (text === '') return '';
  return turned ? `${text}. Another time through, the strokes are turned round.` : `${text}.`;
}

function strokeHead(sound: Sound | null): string {
  if (!sound) return 'Not played';
  const direction = sound.direction === 'down' ? 'down' : 'up';
  if (sound.slurred) return `Still ${direction}`;
  const name = direction === 'down' ? 'Down' : 'Up';
  return sound.retake ? `${name} again` : name;
}
