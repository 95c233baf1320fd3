/**
 * What stands out in a passage, for the memory to hold on to: facts a teacher may keep or strike.
 *
 * Read note by note over the written events of the passage, chords by their top note, tied notes
 * once. In `(GA) (Bc) d2 (cB) (AG)` all five facts but one are there: four slurred pairs; a run of
 * five letters up and another down, sharing d; one finger on two strings, none (it needs, say, E on
 * the D string then B on the A string); strokes of 2 2 1 2 2 notes, the same from either end; and
 * two string crossings, G to A and A to G, both within a stroke.
 */

import type { Fingering, Stop } from '../fingering/fingering.ts';
import { topPitch } from '../music/note-at.ts';
import { diatonic } from '../music/pitch.ts';
import type { Direction, NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/** One fact that stands out in a passage. Notes are event indices. */
export type Standout =
  | { readonly kind: 'slurred-pairs'; readonly pairs: readonly (readonly [number, number])[] }
  | { readonly kind: 'crossings'; readonly crossings: readonly Crossing[] }
  | {
      readonly kind: 'same-finger';
      readonly finger: number;
      readonly notes: readonly [number, number];
    }
  | { readonly kind: 'run'; readonly way: 'up' | 'down'; readonly notes: readonly number[] }
  /** Notes to each stroke. */
  | { readonly kind: 'symmetric-strokes'; readonly counts: readonly number[] };

/** A step to another string, and the stroke that plays the first note on it. */
export interface Crossing {
  readonly note: number;
  readonly from: number;
  readonly to: number;
  /** null where the strokes are not known. */
  readonly stroke: Direction | null;
  /** Within one stroke. */
  readonly slurred: boolean;
}

/** A stroke as the passage needs it: its direction, and its written notes. */
export interface PassageStroke {
  readonly direction: Direction;
  readonly notes: readonly number[];
}

/**
 * The facts about the events `first` to `last`, both included, with the strokes that play them in
 * order.
 */
export function standoutsOf(
  tune: Tune,
  fingering: Fingering,
  passage: { readonly first: number; readonly last: number },
  strokes: readonly PassageStroke[],
): Standout[] {
  const heard = heardNotes(tune, fingering, passage);
  const strokeOf = new Map(strokes.flatMap((s, i) => s.notes.map(n => [n, i] as const)));
  const sounded = strokes.map(s => s.notes.filter(n => heard.some(h => h.event === n)));
  const counts = sounded.map(notes => notes.length);
  return [
    ...slurredPairs(sounded),
    ...runs(heard),
    ...sameFingers(heard),
    ...crossings(heard, strokeOf, strokes),
    ...symmetric(counts.filter(n => n > 0)),
  ];
}

interface Heard {
  readonly event: number;
  /** Staff steps of the top note. */
  readonly steps: number;
  readonly stop: Stop | null;
}

/** The notes of a passage as they are heard: chords by their top note, tied notes once. */
function heardNotes(
  tune: Tune,
  fingering: Fingering,
  { first, last }: { readonly first: number; readonly last: number },
): Heard[] {
  const heard: Heard[] = [];
  let before: NoteEvent | null = null;
  for (let event = first; event <= last; event++) {
    const e = at(tune.events, event);
    if (e.kind === 'rest') {
      before = null;
      continue;
    }
    const top = topPitch(e);
    const held = before?.tied && topPitch(before).midi === top.midi;
    before = e;
    if (held) continue;
    heard.push({ event, steps: diatonic(top), stop: at(fingering, event).at(-1) ?? null });
  }
  return heard;
}

function slurredPairs(strokes: readonly (readonly number[])[]): Standout[] {
  const pairs = strokes.flatMap(([a, b, ...more]) =>
    a !== undefined && b !== undefined && more.length === 0 ? [[a, b] as const] : [],
  );
  return pairs.length > 0 ? [{ kind: 'slurred-pairs', pairs }] : [];
}

/** Notes to a run, at least: three letters in a row are met in any tune. */
const shortestRun = 4;

/**
 * Runs: notes by step, all one way. `G A B c d c B A G z` is one of five notes up, and one of five
 * down, which begins on the note where the first one ends.
 */
function runs(heard: readonly Heard[]): Standout[] {
  const found: Standout[] = [];
  let run: readonly Heard[] = heard.slice(0, 1);
  let way = 0;
  const close = (): void => {
    if (run.length < shortestRun) return;
    found.push({ kind: 'run', way: way > 0 ? 'up' : 'down', notes: run.map(h => h.event) });
  };
  for (const note of heard.slice(1)) {
    const last = at(run, run.length - 1);
    const step = note.steps - last.steps;
    if (Math.abs(step) === 1 && step === way) {
      run = [...run, note];
      continue;
    }
    close();
    [run, way] = Math.abs(step) === 1 ? [[last, note], step] : [[note], 0];
  }
  close();
  return found;
}

function sameFingers(heard: readonly Heard[]): Standout[] {
  return heard.flatMap(({ event, stop }, i): Standout[] => {
    const before = heard[i - 1];
    if (!stop || !before?.stop || stop.finger === 0) return [];
    const across = Math.abs(stop.string - before.stop.string) === 1;
    if (!across || stop.finger !== before.stop.finger) return [];
    return [{ kind: 'same-finger', finger: stop.finger, notes: [before.event, event] }];
  });
}

function crossings(
  heard: readonly Heard[],
  strokeOf: ReadonlyMap<number, number>,
  strokes: readonly PassageStroke[],
): Standout[] {
  const found = heard.flatMap(({ event, stop }, i): Crossing[] => {
    const before = heard[i - 1];
    if (!stop || !before?.stop || stop.string === before.stop.string) return [];
    const stroke = strokeOf.get(event);
    const direction = stroke === undefined ? null : at(strokes, stroke).direction;
    const slurred = stroke !== undefined && stroke === strokeOf.get(before.event);
    return [{ note: event, from: before.stop.string, to: stop.string, stroke: direction, slurred }];
  });
  return found.length > 0 ? [{ kind: 'crossings', crossings: found }] : [];
}

/** The same from either end, with more than one kind of stroke. */
function symmetric(counts: readonly number[]): Standout[] {
  const alike = counts.every((n, i) => n === at(counts, counts.length - 1 - i));
  return alike && new Set(counts).size > 1 ? [{ kind: 'symmetric-strokes', counts }] : [];
}
