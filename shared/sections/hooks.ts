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
import { diatonic } from '../music/pitch.ts';
import type { Direction, NoteEvent, Tune } from '../music/tune.ts';

/** Notes are event indices. */
export type Hook =
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
export function hooksOf(
  tune: Tune,
  fingering: Fingering,
  passage: { readonly first: number; readonly last: number },
  strokes: readonly PassageStroke[],
): Hook[] {
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

function heardNotes(
  tune: Tune,
  fingering: Fingering,
  { first, last }: { readonly first: number; readonly last: number },
): Heard[] {
  const heard: Heard[] = [];
  let before: NoteEvent | null = null;
  for (let event = first; event <= last; event++) {
    const e = tune.events[event];
    const top = e?.kind === 'note' ? e.pitches.at(-1) : undefined;
    const held = before?.tied && before.pitches.at(-1)?.midi === top?.midi;
    before = e?.kind === 'note' ? e : null;
    if (!top || held) continue;
    heard.push({ event, steps: diatonic(top), stop: fingering[event]?.at(-1) ?? null });
  }
  return heard;
}

function slurredPairs(strokes: readonly (readonly number[])[]): Hook[] {
  const pairs = strokes.flatMap(([a, b, ...more]) =>
    a !== undefined && b !== undefined && more.length === 0 ? [[a, b] as const] : [],
  );
  return pairs.length > 0 ? [{ kind: 'slurred-pairs', pairs }] : [];
}

/** Four or more notes by step, all one way. */
function runs(heard: readonly Heard[]): Hook[] {
  const found: Hook[] = [];
  let start = 0;
  for (let i = 1; i <= heard.length; i++) {
    const step = stepTo(heard, i);
    if (i > start + 1 && step === stepTo(heard, start + 1)) continue;
    const way = stepTo(heard, start + 1) > 0 ? 'up' : 'down';
    const notes = heard.slice(start, i).map(h => h.event);
    if (notes.length >= 4) found.push({ kind: 'run', way, notes });
    // The note where the run turns begins the next one.
    start = Math.abs(step) === 1 ? i - 1 : i;
  }
  return found;
}

const stepTo = (heard: readonly Heard[], i: number): number =>
  (heard[i]?.steps ?? Number.NaN) - (heard[i - 1]?.steps ?? Number.NaN);

function sameFingers(heard: readonly Heard[]): Hook[] {
  return heard.flatMap(({ event, stop }, i): Hook[] => {
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
): Hook[] {
  const found = heard.flatMap(({ event, stop }, i): Crossing[] => {
    const before = heard[i - 1];
    if (!stop || !before?.stop || stop.string === before.stop.string) return [];
    const stroke = strokeOf.get(event);
    const direction = strokes[stroke ?? -1]?.direction ?? null;
    const slurred = stroke !== undefined && stroke === strokeOf.get(before.event);
    return [{ note: event, from: before.stop.string, to: stop.string, stroke: direction, slurred }];
  });
  return found.length > 0 ? [{ kind: 'crossings', crossings: found }] : [];
}

/** The same from either end, with more than one kind of stroke. */
function symmetric(counts: readonly number[]): Hook[] {
  const alike = counts.every((n, i) => n === counts[counts.length - 1 - i]);
  return alike && new Set(counts).size > 1 ? [{ kind: 'symmetric-strokes', counts }] : [];
}
