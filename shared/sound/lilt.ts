import { type Counted, isCompound, isHalved } from '../music/meter.ts';
import type { Meter, Tune, TuneType } from '../music/tune.ts';
import { at } from '../must.ts';

/**
 * How unevenly notes of one written length are played. Pairs of quavers (semiquavers in a halved 2/4) are
 * stretched long and short; the three quavers of a dotted beat are long, short and middling. Only what is written even
 * is moved: in a crotchet, an onset at its half (and quarters beside it); in a dotted crotchet, an
 * onset at its third. `B>c`, `(3Bcd` and the long-short of a jig stand as written.
 *
 * Pairs of 2 : 1: the crotchet `BA` is played ⅔ + ⅓ of a crotchet. Threes of 1.2 : 0.8 : 1: `BAG` is
 * played 0.4 + 0.267 + 0.333 of its beat.
 */
export type Lilt =
  | {
      readonly kind: 'pairs';
      /** Long to short: 1 is even. */
      readonly ratio: number;
      /** Written dots, 3 : 1, are eased to the same ratio. */
      readonly easesDots: boolean;
    }
  /** Shares of the beat, which add up to 3. */
  | { readonly kind: 'threes'; readonly shares: readonly [number, number, number] };

/** How far a lilt may be set for a type of tune: a ratio of pairs, or the strength of threes, 0 to 1. */
export interface LiltRange {
  readonly kind: 'pairs' | 'threes';
  readonly least: number;
  readonly most: number;
  readonly usual: number;
}

const pairs = (most: number, usual: number): LiltRange => ({
  kind: 'pairs',
  least: 1,
  most,
  usual,
});
const threes = (usual: number): LiltRange => ({ kind: 'threes', least: 0, most: 1, usual });

/** Common practice, without a published source: reels 1 to 1.3, hornpipes 1.5 to 2, the rest even. */
const ranges: Readonly<Partial<Record<TuneType, LiltRange>>> = {
  reel: pairs(1.5, 1.15),
  hornpipe: pairs(2.5, 1.75),
  jig: threes(0.5),
  'slip jig': threes(0.5),
  slide: threes(0.3),
};

/** What can be set for a tune, and where it starts. */
export function liltRange({ type, meter }: Pick<Tune, 'type' | 'meter'>): LiltRange {
  const own = type && ranges[type];
  if (own && (own.kind === 'threes') === isCompound(meter)) return own;
  return isCompound(meter) ? threes(0) : pairs(1.5, 1);
}

/** The lilt at a setting of its range. Threes at 1 are 1.4 : 0.6 : 1. */
export function liltAt(range: LiltRange, amount: number, easesDots = false): Lilt {
  const set = Math.min(range.most, Math.max(range.least, amount));
  if (range.kind === 'pairs') return { kind: 'pairs', ratio: set, easesDots };
  return { kind: 'threes', shares: [1 + 0.4 * set, 1 - 0.4 * set, 1] };
}

/** The written stretch that a lilt reshapes in a bar of that metre, in whole notes. */
export function liltSlot(lilt: Lilt, meter: Meter, tune: Counted): number {
  if (lilt.kind === 'pairs') return isHalved(tune) ? 1 / 8 : 1 / 4;
  return 3 / (meter.free ? 8 : meter.unit);
}

/**
 * Where a place in a slot is played. Both are in parts of the slot, 0 to 1; `onsets` are the places
 * in the slot, after its start, at which something written begins.
 */
export function liltPlace(lilt: Lilt, onsets: readonly number[], place: number): number {
  if (lilt.kind === 'pairs') {
    const first = lilt.ratio / (1 + lilt.ratio);
    if (isEven(onsets, 2)) return bent(place, [1 / 2], [first]);
    const isDotted = onsets.length === 1 && isNear(at(onsets, 0), 3 / 4);
    return lilt.easesDots && isDotted ? bent(place, [3 / 4], [first]) : place;
  }
  if (!isEven(onsets, 3)) return place;
  const [long, short] = lilt.shares;
  return bent(place, [1 / 3, 2 / 3], [long / 3, (long + short) / 3]);
}

/** Whether something begins at a slot's first even division, and nothing off its halves. */
const isEven = (onsets: readonly number[], into: number): boolean =>
  onsets.some(x => isNear(x, 1 / into)) &&
  onsets.every(x => isNear(x * into * 2, Math.round(x * into * 2)));

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

/** Straight lines from (0, 0) through the given points to (1, 1). */
function bent(x: number, from: readonly number[], to: readonly number[]): number {
  const xs = [0, ...from, 1];
  const ys = [0, ...to, 1];
  // The last point of `from` that is not past x begins its line.
  const i = xs.slice(1, -1).filter(a => a <= x + 1e-12).length;
  const [x0, x1, y0, y1] = [at(xs, i), at(xs, i + 1), at(ys, i), at(ys, i + 1)];
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
