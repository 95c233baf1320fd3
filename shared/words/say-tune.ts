import { asIfStandard } from '../fingering/as-if-standard.ts';
import type { Stop, Tuning } from '../fingering/fingering.ts';
import { fiddleTuning } from '../fingering/tunings.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Pitch } from '../music/pitch.ts';
import type { Direction, NoteEvent } from '../music/tune.ts';
import type { Study } from '../study.ts';
import {
  type SpokenLanguage,
  type SpokenPhrases,
  spokenFinger,
  spokenPitch,
  stopOn,
  stringNames,
} from './spoken.ts';

/**
 * A tune said aloud, for those who do not read notation and for screen readers: note, string,
 * finger and stroke.
 */

/**
 * Which of its octaves a note is in, counted from the fiddle's lowest string: G3 to F4 sharp is
 * low, G4 to F5 sharp is middle, from G5 high.
 */
const registerOf = (p: Pitch): SpokenNote['register'] =>
  p.midi < 67 ? 'low' : p.midi < 79 ? 'middle' : 'high';

/**
 * On a retuned string, the note that the finger would give on a fiddle as it comes; null where the
 * string is as it comes, or the note out of reach.
 */
function asIfPitch(p: Pitch, stop: Stop | null, tuning: Tuning): Pitch | null {
  const open = stop && tuning[stop.string - 1];
  if (!stop || !open || open.midi === fiddleTuning[stop.string - 1]?.midi) return null;
  return asIfStandard(p, stop, tuning);
}

/** "F sharp, high 2 on D"; on a retuned string "B, 1 on low A, as if A". */
export const spokenNote = (
  language: SpokenLanguage,
  stop: Stop | null,
  pitch: Pitch,
  tuning: Tuning,
  names: NoteNames,
): string => {
  const strings = stringNames(language, tuning, names);
  return withPlace(sayPitch(language, stop, pitch, { tuning, strings, names }));
};

/** One pitch in words: what it is called, where it is stopped, and what it is as if. */
interface SaidPitch {
  readonly name: string;
  readonly place: string;
  readonly asIf: string | null;
}

/** The strings of a tune and their names, and what its notes are called. */
interface Strings {
  readonly tuning: Tuning;
  readonly strings: readonly string[];
  readonly names: NoteNames;
}

function sayPitch(
  language: SpokenLanguage,
  stop: Stop | null,
  pitch: Pitch,
  { tuning, strings, names }: Strings,
): SaidPitch {
  const asIf = asIfPitch(pitch, stop, tuning);
  return {
    name: spokenPitch(language, pitch, names),
    place: stopOn(language, stop, strings),
    asIf: asIf && language.spoken.asIf(spokenPitch(language, asIf, names)),
  };
}

const withPlace = ({ name, place, asIf }: SaidPitch): string =>
  asIf === null ? `${name}, ${place}` : `${name}, ${place}, ${asIf}`;

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
  /** "high 2 on D"; "open D and open A" of a double stop; empty out of first position. */
  readonly place: string;
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
export function speakTune(
  language: SpokenLanguage,
  study: Study,
  names: NoteNames,
): readonly SpokenPart[] {
  const { tune, map, tuning } = study;
  const on = { tuning, strings: stringNames(language, tuning, names), names };
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
        const first = { sound: sound.get(event) ?? null, varying: varying.has(event) };
        said.push(speakEvent(language, study, e, event, first, on));
      }
      const notes = said.flatMap(s => (s === 'rest' ? [] : [s.note]));
      const text = barText(said, language.spoken);
      return [{ name: bar.name, phrase: opens.get(index) ?? null, notes, text }];
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
    if (n.tied.length === 0 && sounds.has(n.event)) return;
    const { direction, retake } = s;
    const sound = { stroke, direction, slurred: s.notes[0] !== i, held: false, retake };
    if (!sounds.has(n.event)) sounds.set(n.event, sound);
    for (const tied of n.tied) {
      if (!sounds.has(tied)) sounds.set(tied, { ...sound, slurred: true, held: true });
    }
  });
  return sounds;
}

function speakEvent(
  language: SpokenLanguage,
  { fingering }: Study,
  e: NoteEvent,
  event: number,
  { sound, varying }: { readonly sound: Sound | null; readonly varying: boolean },
  on: Strings,
): Exclude<Said, 'rest'> {
  const { and, together } = language.spoken;
  const stops = e.pitches.map((_, i) => fingering[event]?.[i] ?? null);
  const said = e.pitches.map((p, i) => sayPitch(language, stops[i] ?? null, p, on));
  const known = stops.filter(stop => stop !== null);
  const all = known.length === stops.length;
  const top = e.pitches.at(-1);
  const asIf = said.flatMap(s => s.asIf ?? []);
  const note: SpokenNote = {
    event,
    name: said.map(s => s.name).join(and),
    register: top ? registerOf(top) : 'middle',
    string: all ? known.map(s => on.strings[s.string - 1]).join(and) : null,
    finger: all ? known.map(s => spokenFinger(language, s)).join(and) : null,
    place: all ? said.map(s => s.place).join(and) : '',
    asIf: asIf.length > 0 ? asIf.join(and) : null,
    stroke: sound?.direction ?? null,
    slurred: sound?.slurred ?? false,
    held: sound?.held ?? false,
    varying,
  };
  return { note, where: said.map(withPlace).join(together), sound };
}

/**
 * "Down: G, 3 on D; A, open A. Up: B, 1 on A." A stroke that began in the bar before goes on: "Still
 * down: …". A bow that is lifted and starts again the same way: "Down again: …".
 */
function barText(said: readonly Said[], spoken: SpokenPhrases): string {
  const groups: { head: string; words: string[] }[] = [];
  let stroke: number | null = null;
  for (const s of said) {
    if (s === 'rest') {
      groups.push({ head: '', words: [spoken.rest] });
      continue;
    }
    const words = s.note.held ? spoken.held(s.note.name) : s.where;
    const last = groups.at(-1);
    if (last && s.sound && s.sound.stroke === stroke && last.head !== '') last.words.push(words);
    else groups.push({ head: strokeHead(s.sound, spoken), words: [words] });
    stroke = s.sound?.stroke ?? null;
  }
  const text = groups.map(g => (g.head ? `${g.head}: ` : '') + g.words.join('; ')).join('. ');
  const turned = said.some(s => s !== 'rest' && s.note.varying);
  if (text === '') return '';
  return turned ? `${text}. ${spoken.turned}` : `${text}.`;
}

function strokeHead(sound: Sound | null, { notPlayed, stroke }: SpokenPhrases): string {
  if (!sound) return notPlayed;
  const { begins, still, again } = stroke[sound.direction];
  if (sound.slurred) return still;
  return sound.retake ? again : begins;
}
