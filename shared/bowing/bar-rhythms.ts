import {
  compare,
  divide,
  type Fraction,
  fraction,
  fractionText,
  multiply,
  subtract,
  toNumber,
  zero,
} from '../music/fraction.ts';
import { isCompound, meterLength } from '../music/meter.ts';
import type { Meter, Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/** Place of a note in the rhythm of its half bar, or of its beat in compound time. */
export interface RhythmPlace {
  /** Lengths of the notes that begin in it, in units of `gridOf`, as text: `2 1 1`; `1 1 @2` begins two units late. */
  readonly rhythm: string;
  /** Number of the note in it, from 0. */
  readonly index: number;
  /** Length of the note in the same units, as text. */
  readonly length: string;
  /** Whether it begins a bar, its half bar (or beat), or neither. */
  readonly begins: 'bar' | 'half' | 'inside';
  /** Number of the half bar in the tune. */
  readonly half: number;
  /** Whether a note in its half bar has a staccato dot. */
  readonly dotsNear: boolean;
}

/**
 * Unit in which rhythms are counted, in whole notes: an eighth of a bar of two or four beats, so that 2/4 and 4/4
 * compare; else a quaver, or the lower figure of compound time.
 */
export function gridOf(meter: Meter): Fraction {
  const length = meterLength(meter);
  if (isCompound(meter)) return fraction(1, meter.unit);
  const even = length && [fraction(1, 2), fraction(1)].some(l => compare(l, length) === 0);
  return even ? divide(length, fraction(8)) : fraction(1, 8);
}

/** Length of a rhythm, in whole notes: half a bar of eight units, a beat of compound time, else a crotchet. */
function spanOf(meter: Meter, grid: Fraction): Fraction {
  if (isCompound(meter)) return multiply(grid, fraction(3));
  const length = meterLength(meter);
  const eight = length && compare(divide(length, grid), fraction(8)) === 0;
  return eight ? multiply(grid, fraction(4)) : fraction(1, 4);
}

/** Onset of an event from the start of its bar, in whole notes; a pickup counts as the end of a full bar. */
export function onsetInFullBar(tune: Tune, event: number): Fraction {
  const { bar, onset } = at(tune.events, event);
  const { pickup, meter, length } = at(tune.bars, bar);
  const full = meterLength(meter);
  return pickup && full ? subtract(full, subtract(length, onset)) : onset;
}

/** Finds the place of each event in the rhythm of its half bar; null for rests. */
export function rhythmPlaces(tune: Tune): readonly (RhythmPlace | null)[] {
  const places: (RhythmPlace | null)[] = tune.events.map(() => null);
  let half = 0;
  for (const bar of tune.bars) {
    const grid = gridOf(bar.meter);
    const span = spanOf(bar.meter, grid);
    const halves = new Map<number, number[]>();
    for (let e = bar.first; e < bar.end; e++) {
      if (at(tune.events, e).kind !== 'note') continue;
      const number = Math.floor(toNumber(divide(onsetInFullBar(tune, e), span)));
      halves.set(number, [...(halves.get(number) ?? []), e]);
    }
    for (const [number, events] of halves) {
      const units = (f: Fraction): string => fractionText(divide(f, grid));
      const lengths = events.map(e => units(at(tune.events, e).duration));
      const late = subtract(onsetInFullBar(tune, at(events, 0)), multiply(span, fraction(number)));
      const rhythm = lengths.join(' ') + (compare(late, zero) === 0 ? '' : ` @${units(late)}`);
      const dotsNear = events.some(e => isDotted(tune, e));
      events.forEach((e, index) => {
        const early = index === 0 && compare(late, zero) === 0;
        const begins = early ? (number === 0 ? 'bar' : 'half') : 'inside';
        places[e] = { rhythm, index, length: at(lengths, index), begins, half, dotsNear };
      });
      half++;
    }
  }
  return places;
}

/** Whether a note has a staccato dot. */
export function isDotted(tune: Tune, event: number): boolean {
  const note = at(tune.events, event);
  return note.kind === 'note' && note.staccato;
}
