/**
 * A tune's bars cut into phrases: which written bars each phrase holds, and which bars it is heard
 * with.
 *
 * Every written bar belongs to one phrase. A part of eight bars with two endings, in twos:
 *
 *   written   A0 A1 A2 · A3 A4 · A5 A6 · A7 A8/1 · A8/2
 *   heard     A1 A2    · A3 A4 · A5 A6 · A7 A8/1 · A7 A8/2
 *
 * A pickup goes with the phrase that it leads into, but is not compared: the notes that lead into
 * A5 stand at the end of A4, and A5-A6 is still the same phrase as A1-A2. The bars before an ending
 * belong to the first ending's phrase; the other endings' bars make phrases of their own, heard
 * after the same bars before.
 *
 * In a crooked part the bars left over, up to half a phrase, lengthen one phrase, the last unless
 * `crooked-parts.ts` hears another (nine bars in twos are 2 2 2 3, or 2 3 2 2); more than half a
 * phrase is a short phrase of its own at the end.
 */

import type { Bar, Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/** The bars of one phrase, as indices into `tune.bars`, in order. */
export interface PhraseBars {
  readonly part: number;
  /** Written, the pickup that leads into them counted in. */
  readonly written: readonly number[];
  /** As played: bars shared with another ending before them, pickups left out. */
  readonly heard: readonly number[];
}

/**
 * Phrases of `unit` bars, in written order. `long` says for crooked parts (by index) which of their
 * phrases, from 0, has the bars left over.
 */
export function phraseBars(
  tune: Tune,
  unit: number,
  long: ReadonlyMap<number, number> = new Map(),
): PhraseBars[] {
  return tune.parts.flatMap((part, index) => {
    const bars = part.bars.map(i => ({ index: i, bar: at(tune.bars, i) }));
    const count = Math.max(0, ...bars.map(b => b.bar.number));
    return partPhrases(bars, index, slots(count, unit, long.get(index)));
  });
}

/** Phrases, as many as are whole, of a part whose left-over bars lengthen one of them; else 0. */
export function longPhrases(count: number, unit: number): number {
  const left = count % unit;
  return left > 0 && left * 2 <= unit ? Math.floor(count / unit) : 0;
}

interface Placed {
  readonly index: number;
  readonly bar: Bar;
}

interface Growing extends PhraseBars {
  readonly slot: number;
  readonly written: number[];
  readonly heard: number[];
}

/** Cuts one part; `slotOf` says which phrase of it, from 0, a bar falls in. */
function partPhrases(
  bars: readonly Placed[],
  part: number,
  slotOf: (bar: Bar) => number,
): PhraseBars[] {
  const phrases: Growing[] = [];
  let pickups: number[] = [];
  bars.forEach(({ index, bar }, here) => {
    if (bar.pickup) {
      pickups.push(index);
      return;
    }
    const slot = slotOf(bar);
    const last = phrases.at(-1);
    if (last && slot === last.slot && runsOn(at(bars, here - 1), { index, bar })) {
      last.written.push(...pickups, index);
      last.heard.push(index);
    } else {
      const stem = bar.endings.length > 0 ? stemOf(bars, here, slot, slotOf) : [];
      phrases.push({ part, slot, written: [...pickups, index], heard: [...stem, index] });
    }
    pickups = [];
  });
  if (pickups.length === 0) return phrases;
  const last = phrases.at(-1);
  if (last) last.written.push(...pickups);
  else phrases.push({ part, slot: 0, written: pickups, heard: pickups });
  return phrases;
}

/** Whether a bar is played straight after the one written before it. */
const runsOn = (a: Placed, b: Placed): boolean =>
  b.index === a.index + 1 &&
  (a.bar.endings.length === 0 || a.bar.endings.join() === b.bar.endings.join());

/** The bars of the phrase of the bar `here`, in an ending, that stand before the endings. */
function stemOf(
  bars: readonly Placed[],
  here: number,
  slot: number,
  slotOf: (bar: Bar) => number,
): number[] {
  const stem: number[] = [];
  let passedEndings = false;
  for (let i = here - 1; i >= 0; i--) {
    const before = at(bars, i);
    const inEnding = before.bar.endings.length > 0;
    if (inEnding && !passedEndings && stem.length === 0) continue;
    if (inEnding || before.bar.pickup || slotOf(before.bar) !== slot) break;
    passedEndings = true;
    stem.unshift(before.index);
  }
  return stem;
}

/** Which phrase of its part a bar falls in, from its number. */
function slots(count: number, unit: number, long?: number): (bar: Bar) => number {
  const whole = longPhrases(count, unit);
  const left = whole > 0 ? count % unit : 0;
  const stretched = long ?? whole - 1;
  return ({ number }) => {
    const n = Math.max(1, number) - 1;
    const slot = Math.floor(n / unit);
    if (whole === 0 || slot <= stretched) return slot;
    return Math.max(stretched, Math.floor((n - left) / unit));
  };
}
