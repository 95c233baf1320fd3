import { add, compare, equal, type Fraction } from './fraction.ts';
import { meterLength } from './meter.ts';
import type { Meter, Part } from './tune.ts';

/**
 * Names bars as teachers name them: `A1` is the first full bar of part A, `A0` the pickup that
 * leads into it, `A8/2` bar 8 in the second ending.
 *
 * A new part begins at a repeat sign, after a double bar, and at `P:`; where `P:` is used in the
 * body it alone makes parts. A double bar within four full bars of the start of the tune, or of
 * the double bar before, or inside an open repeat, is only a sign to the eye.
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

/** A name for each bar, and the parts they make. */
export function nameBars(bars: readonly BarShape[]): NamedBars {
  const stretches = bars.some(b => b.partName !== null) ? cutAtNames(bars) : cutAtSigns(bars);
  const names: BarName[] = [];
  const parts: { name: string; bars: number[]; reached: number }[] = [];
  const labels = new Map<string, number>();
  for (const { from, to, label } of stretches) {
    const known = label === null ? undefined : labels.get(label);
    const part = known ?? parts.length;
    if (known === undefined) {
      parts.push({ name: partName(label, parts), bars: [], reached: 0 });
      if (label !== null) labels.set(label, part);
    }
    const home = parts[part];
    if (home) numberStretch(bars, from, to, part, home, names);
  }
  return { names, parts: parts.map(({ name, bars }) => ({ name, bars })) };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly label: string | null;
}

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
    const bar = bars[i] as BarShape;
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
    names[i] = { name: `${home.name}${shown}${suffix}`, part, number: shown, pickup };
    home.bars.push(i);
    home.reached = Math.max(home.reached, number);
  }
}

/** Where `P:` is used it makes the parts; what stands before the first is a pickup to it, or free. */
function cutAtNames(bars: readonly BarShape[]): Stretch[] {
  const starts = bars.flatMap((b, i) => (b.partName === null ? [] : [i]));
  const first = starts[0] ?? 0;
  const lead = bars.slice(0, first);
  const leadIsPickup = lead.length === 1 && lead.every(isShort);
  const stretches = starts.map((from, k) => ({
    from: k === 0 && leadIsPickup ? 0 : from,
    to: starts[k + 1] ?? bars.length,
    label: bars[from]?.partName ?? null,
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
    const bar = bars[i] as BarShape;
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

function endsPart(
  bars: readonly BarShape[],
  from: number,
  i: number,
  repeatOpen: boolean,
): boolean {
  const bar = bars[i] as BarShape;
  const next = bars[i + 1] as BarShape;
  // What follows is another ending of the same part.
  if (next.opensEnding && bar.endings.length > 0) return false;
  const lastEnding = bar.endings.length > 0 && next.endings.length === 0;
  if (bar.closesRepeat === 1 && !next.opensRepeat && !bar.closesPart && !lastEnding) return false;
  const full = bars.slice(from, i + 1).filter(b => !isShort(b)).length;
  if (full === 0 && bar.closesRepeat === 1) return false;
  if (bar.closesRepeat > 1 || next.opensRepeat) return true;
  const afterRepeat = (bars[from - 1]?.closesRepeat ?? 1) > 1;
  return (
    (bar.closesPart && (full >= 4 || afterRepeat || lastEnding) && !(repeatOpen && !lastEnding)) ||
    lastEnding
  );
}

/** The short bar before a repeat sign is the next part's pickup, not this part's last bar. */
function leadsOn(bars: readonly BarShape[], from: number, i: number): boolean {
  const bar = bars[i] as BarShape;
  const next = bars[i + 1];
  if (i === from || bar.closesRepeat > 1 || !isShort(bar)) return false;
  if (!next?.opensRepeat || isShort(next)) return false;
  if (bar.endings.length > 0) {
    // Nothing closes a last ending but the sign: a bar of it that the one before leaves over leads on.
    const before = bars[i - 1];
    return !bar.opensEnding && before !== undefined && completes(bar, before);
  }
  const opening = bars[from];
  return !(opening && isShort(opening) && completes(bar, opening));
}

/** Together they make one full bar. */
export function completes(a: Pick<BarShape, 'meter' | 'length'>, b: { length: Fraction }): boolean {
  const full = meterLength(a.meter);
  return full !== null && equal(add(a.length, b.length), full);
}

/** Shorter than its metre says. In free time no bar is. */
export function isShort(bar: Pick<BarShape, 'meter' | 'length'>): boolean {
  const full = meterLength(bar.meter);
  return full !== null && compare(bar.length, full) < 0;
}

/** `P:` as it can stand in a bar's name, letters only: `V 2` is `Vii`; else the first free letter. */
function partName(label: string | null, parts: readonly { readonly name: string }[]): string {
  const taken = new Set(parts.map(p => p.name));
  let wished = (label ?? '')
    .replace(/\d+/g, n => roman(Number(n)))
    .replace(/[^A-Za-z']/g, '')
    .replace(/^'+/, '');
  if (wished !== '') {
    while (taken.has(wished)) wished += "'";
    return wished;
  }
  for (let n = 0; ; n++) {
    const letter = String.fromCharCode(65 + (n % 26)).repeat(1 + Math.floor(n / 26));
    if (!taken.has(letter)) return letter;
  }
}

function roman(n: number): string {
  const tens = ['', 'x', 'xx', 'xxx'][Math.floor(n / 10) % 4] ?? '';
  return tens + (['', 'i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix'][n % 10] ?? '');
}
