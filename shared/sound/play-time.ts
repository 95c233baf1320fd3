import { add, compare, type Fraction, toNumber } from '../music/fraction.ts';
import { meterLength } from '../music/meter.ts';
import type { PlayedBar } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { type Lilt, liltPlace, liltSlot } from './lilt.ts';
import type { PlayedTune } from './passage.ts';

/** How fast: `perMinute` beats of length `beat` (whole notes). */
export interface PlayTempo {
  readonly beat: Fraction;
  readonly perMinute: number;
}

export const secondsPerWhole = ({ beat, perMinute }: PlayTempo): number =>
  60 / (perMinute * toNumber(beat));

/**
 * Says when a time of the tune (whole notes from its start) is played, in whole notes still: the
 * lilt moves what is inside a bar, and no bar. Works out each bar's lilt once.
 */
export function playTime(played: PlayedTune, lilt: Lilt): (time: Fraction) => number {
  const { tune, performance } = played;
  const shapes = new Map<number, BarShape>();
  const shapeOf = (bar: number): BarShape => {
    const known = shapes.get(bar) ?? barShape(tune, bar, lilt);
    shapes.set(bar, known);
    return known;
  };
  return time => {
    const bar = barAt(performance.bars, time);
    if (!bar) return toNumber(time);
    const shape = shapeOf(bar.bar);
    const onset = toNumber(bar.onset);
    const place = toNumber(time) - onset + shape.before;
    const slot = Math.floor(place / shape.slot + 1e-9);
    const inSlot = place / shape.slot - slot;
    const moved = liltPlace(lilt, shape.onsets.get(slot) ?? [], Math.max(0, inSlot));
    return onset - shape.before + (slot + moved) * shape.slot;
  };
}

interface BarShape {
  readonly slot: number;
  /** What a pickup lacks of a full bar, before it. */
  readonly before: number;
  /** By slot, where in it something begins, in parts of it, its start left out. */
  readonly onsets: ReadonlyMap<number, readonly number[]>;
}

function barShape(tune: Tune, index: number, lilt: Lilt): BarShape {
  const bar = at(tune.bars, index);
  const slot = liltSlot(lilt, bar.meter, tune);
  const before = beforeBar(tune, index);
  const onsets = new Map<number, number[]>();
  let tied = false;
  for (const event of tune.events.slice(bar.first, bar.end)) {
    const place = (toNumber(event.onset) + before) / slot;
    const in_ = Math.floor(place + 1e-9);
    if (!tied && place - in_ > 1e-9) onsets.set(in_, [...(onsets.get(in_) ?? []), place - in_]);
    tied = event.kind === 'note' && event.tied;
  }
  return { slot, before, onsets };
}

/** Whole notes by which a pickup bar falls short of a full one: its notes count back from its end. */
export function beforeBar(tune: Tune, index: number): number {
  const bar = at(tune.bars, index);
  const full = meterLength(bar.meter);
  if (!bar.pickup || !full || compare(bar.length, full) >= 0) return 0;
  return toNumber(full) - toNumber(bar.length);
}

/** The played bar that a time falls in, the last for any time past the tune; null in a tune without bars. */
function barAt(bars: readonly PlayedBar[], time: Fraction): PlayedBar | null {
  let [low, high] = [0, bars.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (compare(at(bars, middle).onset, time) <= 0) low = middle;
    else high = middle - 1;
  }
  return bars[low] ?? null;
}

/** The end of a note, from the start of the tune. */
export const endOf = (note: { readonly onset: Fraction; readonly duration: Fraction }): Fraction =>
  add(note.onset, note.duration);
