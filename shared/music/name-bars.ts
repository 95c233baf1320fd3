import { at } from '../must.ts';
import { completes, isShort } from './bar-length.ts';
import type { Fraction } from './fraction.ts';
import { partName } from './part-name.ts';
import type { Meter, Part } from './tune.ts';

/**
 * Names bars as teachers name them: `A1` is the first full bar of part A, `A0` the pickup that
 * leads into it, `A8/2` bar 8 in the second ending.
 *
 * A new part begins at a repeat sign, after a double bar, and at `P:`; where `P:` is used in the
 * body it alone makes parts. A double bar within four full bars of the start of the tune, or of
 * the double bar before, or inside an open repeat, is only a sign to the eye. A short bar and
 * the pickup that fills it count as one full bar.
 *
 * A short bar before a repeat sign may be the end of one part or the start of the next:
 *
 *     FE | D4 A4 | … | D4 D2 :|: FE | …
 *
 * `FE` at the start is A0. `D4 D2` is short by that pickup, so it is A's last bar; `FE` after the
 * sign is B0. In `… | D8 | FE |: D4 …` the bar `FE` stands before the sign, the part before it is
 * already complete, so it too is B0.
 *
 * Bars of a second ending carry the numbers of the bars they stand for, those of the first.
 */
export interface BarShape {
  readonly meter: Meter;
  readonly length: Fraction;
  readonly opensRepeat: boolean;
  readonly closesRepeat: number;
  readonly closesPart: boolean;
  /** Times through that its ending is for; empty outside endings. */
  readonly endings: readonly number[];
  /** An ending begins at this bar. */
  readonly opensEnding: boolean;
  /** `P:` before this bar. */
  readonly partName: string | null;
}

export interface BarName {
  readonly name: string;
  readonly part: number;
  readonly number: number;
  readonly pickup: boolean;
}

export interface NamedBars {
  readonly names: readonly BarName[];
  readonly parts: readonly Part[];
}

/** Names every bar, and groups the bars into parts. Each bar belongs to one part. */
export function nameBars(bars: readonly BarShape[]): NamedBars {
  const stretches = bars.some(b => b.partName !== null) ? cutAtNames(bars) : cutAtSigns(bars);
  const names: BarName[] = [];
  const parts: { name: string; bars: number[]; reached: number }[] = [];
  const labels = new Map<string, number>();
  for (const { from, to, label } of stretches) {
    const known = label === null ? undefined : labels.get(label);
    const part = known ?? parts.length;
    if (known === undefined) {
      const taken = new Set(parts.map(p => p.name));
      parts.push({ name: partName(label, taken), bars: [], reached: 0 });
      if (label !== null) labels.set(label, part);
    }
    numberStretch(bars, from, to, part, at(parts, part), names);
  }
  return { names, parts: parts.map(({ name, bars }) => ({ name, bars })) };
}

/** Bars `from` (included) to `to` (not included) of one part, and its `P:`. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly label: string | null;
}

/** Numbers the bars of a stretch on from where its part, `home`, has got to. */
function numberStretch(
  bars: readonly BarShape[],
  from: number,
  to: number,
  part: number,
  home: { name: string; bars: number[]; reached: number },
  names: BarName[],
): void {
  let number = home.reached;
  let firstOfEnding: number | null = null;
  for (let i = from; i < to; i++) {
    const bar = at(bars, i);
    const alone = to - from === 1 && (bar.partName === null || to === bars.length);
    const pickup = i === from && home.reached === 0 && !alone && isShort(bar);
    const suffix = bar.endings.length > 0 && !pickup ? `/${bar.endings.join(',')}` : '';
    if (bar.endings.length === 0) firstOfEnding = null;
    else if (bar.opensEnding) {
      if (firstOfEnding === null) firstOfEnding = number + 1;
      // Two endings with one number are a slip: the second is counted on, so that names differ.
      const taken = names.some(n => n.name === `${home.name}${firstOfEnding}${suffix}`);
      number = taken ? home.reached : firstOfEnding - 1;
    }
    if (!pickup) number += 1;
    const shown = pickup ? 0 : number;
    names.push({ name: `${home.name}${shown}${suffix}`, part, number: shown, pickup });
    home.bars.push(i);
    home.reached = Math.max(home.reached, number);
  }
}

/** Where `P:` is used it makes the parts; what stands before the first is a pickup to it, or free. */
function cutAtNames(bars: readonly BarShape[]): Stretch[] {
  const starts = bars.flatMap((b, i) => (b.partName === null ? [] : [i]));
  const first = at(starts, 0);
  const lead = bars.slice(0, first);
  const leadIsPickup = lead.length === 1 && lead.every(isShort);
  const stretches = starts.map((from, k) => ({
    from: k === 0 && leadIsPickup ? 0 : from,
    to: starts[k + 1] ?? bars.length,
    label: at(bars, from).partName,
  }));
  return first > 0 && !leadIsPickup
    ? [{ from: 0, to: first, label: null }, ...stretches]
    : stretches;
}

/** Parts from repeat signs and double bars. */
function cutAtSigns(bars: readonly BarShape[]): Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  let repeatOpen = false;
  for (let i = 0; i < bars.length; i++) {
    const bar = at(bars, i);
    const next = bars[i + 1];
    if (bar.opensRepeat) repeatOpen = true;
    if (!next) break;
    if (!endsPart(bars, from, i, repeatOpen)) continue;
    const cut = leadsOn(bars, from, i) ? i : i + 1;
    if (cut > from) {
      stretches.push({ from, to: cut, label: null });
      from = cut;
    }
    repeatOpen = false;
  }
  const before = stretches.at(-1);
  const tail = bars[from];
  if (before && tail && from === bars.length - 1 && isShort(tail)) {
    // A last short bar after a repeat, `… :|D2|]`, closes the part before it.
    stretches[stretches.length - 1] = { ...before, to: bars.length };
  } else if (tail) stretches.push({ from, to: bars.length, label: null });
  return stretches;
}

/** Whether a part that began at `from` ends with bar `i`, which is not the last. */
function endsPart(
  bars: readonly BarShape[],
  from: number,
  i: number,
  repeatOpen: boolean,
): boolean {
  const bar = at(bars, i);
  const next = at(bars, i + 1);
  // What follows is another ending of the same part.
  if (next.opensEnding && bar.endings.length > 0) return false;
  const lastEnding = bar.endings.length > 0 && next.endings.length === 0;
  if (bar.closesRepeat === 1 && !next.opensRepeat && !bar.closesPart && !lastEnding) return false;
  const full = fullBars(bars, from, i);
  if (full === 0 && bar.closesRepeat === 1) return false;
  if (bar.closesRepeat > 1 || next.opensRepeat) return true;
  const afterRepeat = from > 0 && at(bars, from - 1).closesRepeat > 1;
  return lastEnding || (bar.closesPart && !repeatOpen && (full >= 4 || afterRepeat));
}

/** How many full bars stand from `from` to `i`: a last bar that a pickup, its own part's or the next, completes is one. */
function fullBars(bars: readonly BarShape[], from: number, i: number): number {
  const last = at(bars, i);
  const pickups = [i > from ? at(bars, from) : null, bars[i + 1]];
  const joined = isShort(last) && pickups.some(p => p && isShort(p) && completes(last, p));
  return bars.slice(from, i + 1).filter(b => !isShort(b)).length + (joined ? 1 : 0);
}

/** Whether bar `i`, short and before a repeat sign, is the next part's pickup and not this part's end. */
function leadsOn(bars: readonly BarShape[], from: number, i: number): boolean {
  const bar = at(bars, i);
  const next = at(bars, i + 1);
  if (i === from || bar.closesRepeat > 1 || !isShort(bar)) return false;
  if (!next.opensRepeat || isShort(next)) return false;
  if (bar.endings.length > 0) {
    // Nothing closes a last ending but the sign: a bar of it that the one before leaves over leads on.
    return !bar.opensEnding && completes(bar, at(bars, i - 1));
  }
  const opening = at(bars, from);
  return !(isShort(opening) && completes(bar, opening));
}
