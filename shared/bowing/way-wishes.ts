import {
  add,
  compare,
  divide,
  equal,
  type Fraction,
  fraction,
  multiply,
  parseFraction,
  subtract,
  toNumber,
  zero,
} from '../music/fraction.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { gridOf, onsetInFullBar, type RhythmPlace, rhythmPlaces } from './bar-rhythms.ts';
import { practice1883 } from './practice-1883.ts';
import { junctionKind, slurOdds } from './printed-practice.ts';
import type { Pattern, Preset } from './settings.ts';

/**
 * What a way of bowing prefers at the junction between two notes. A wish is in thousandths: above 0 for a slur,
 * below 0 for a change of stroke. Where the way follows the book of 1883 it is the logarithm of the odds that
 * the book slurs, minus `threshold`. Otherwise it is 1000 where its pattern slurs, and -1000 or less where it
 * does not: less where a slur would leave the string or a neighbouring pitch, cross the half bar, or cross the
 * bar line, so that a bend is made where a teacher would make it (`practice-1883.md` counts 4 % onto the half
 * bar, 0.9 % over the bar line; steps on one string: common practice).
 */
export interface WayWishes {
  readonly wish: (before: number, after: number, rough: number) => number;
  /** Whether the way forbids a slur over the junction, whatever the wish. */
  readonly forbids: (before: number, after: number) => boolean;
  /** Whether the notes are a dotted pair, the long one first, that the way hooks. */
  readonly hooks: (before: number, after: number) => boolean;
}

/**
 * Logarithm of the odds above which a junction is slurred. Of the values from -1.2 to 0, the one at which as
 * many slurs are wrong as are missed, on the tunes that were counted.
 */
const threshold = -0.6;

/** Computes the wishes of a preset for a tune. */
export function wayWishes(tune: Tune, preset: Preset): WayWishes {
  const places = rhythmPlaces(tune);
  const matches = patternSlurs(tune, places, preset.pattern);
  const begins = (e: number): RhythmPlace['begins'] => places[e]?.begins ?? 'bar';
  const crosses = (before: number, after: number): RhythmPlace['begins'] =>
    begins(after) === 'inside' && places[before]?.half !== places[after]?.half
      ? 'half'
      : begins(after);
  const inPickup = (e: number): boolean => at(tune.bars, at(tune.events, e).bar).pickup;
  return {
    wish: (before, after, rough) => {
      if (preset.pickups && inPickup(before) && inPickup(after)) {
        return preset.pickups === 'slurred' ? 1000 : -2000;
      }
      if (preset.pattern === 'as-printed-1883') {
        const kind = junctionKind(tune, places, before, after);
        return kind ? Math.round(1000 * (slurOdds(practice1883, kind) - threshold)) : -1000;
      }
      if (matches(before, after)) return 1000;
      return -1000 - 300 * rough;
    },
    forbids: (before, after) => {
      const over = crosses(before, after);
      if (preset.slurOver === 'bar' || over === 'inside') return false;
      return over === 'bar' || preset.slurOver === 'nothing';
    },
    hooks: (before, after) => preset.hooks && isDottedPair(tune, places, before, after),
  };
}

/** Onset from the start of the full bar, scaled so that an eighth of the bar (or a quaver of compound time) is 1/8. */
function quaverOnset(tune: Tune, event: number): Fraction {
  return inQuavers(tune, event, onsetInFullBar(tune, event));
}

function inQuavers(tune: Tune, event: number, length: Fraction): Fraction {
  const grid = gridOf(at(tune.bars, at(tune.events, event).bar).meter);
  return multiply(divide(length, grid), fraction(1, 8));
}

const remainder = (a: Fraction, b: Fraction): Fraction =>
  subtract(a, multiply(b, fraction(Math.floor(toNumber(divide(a, b))))));

/** Whether a pattern slurs two consecutive notes. */
function patternSlurs(
  tune: Tune,
  places: readonly (RhythmPlace | null)[],
  pattern: Pattern | null,
): (before: number, after: number) => boolean {
  const length = (e: number): Fraction => inQuavers(tune, e, at(tune.events, e).duration);
  const onCrotchet = (e: number): boolean =>
    equal(remainder(quaverOnset(tune, e), fraction(1, 4)), zero);
  if (pattern === null || pattern === 'as-printed-1883') return () => false;
  if (pattern === 'whole-bar') return (_, after) => places[after]?.begins !== 'bar';
  if (pattern === 'dotted-pairs') return (a, b) => isDottedPair(tune, places, a, b);
  if (pattern === 'short-into-long') {
    return (a, b) =>
      onCrotchet(b) &&
      compare(length(a), fraction(1, 16)) === 0 &&
      compare(length(b), fraction(1, 8)) > 0;
  }
  const every = parseFraction(pattern.every) ?? fraction(1);
  const slurs = pattern.slurs.map(text => text.split('-').map(o => parseFraction(o) ?? zero));
  return (a, b) => {
    const from = remainder(quaverOnset(tune, a), every);
    const runsOn = equal(
      remainder(add(from, length(a)), every),
      remainder(quaverOnset(tune, b), every),
    );
    return (
      runsOn &&
      slurs.some(([open = zero, close = zero]) => {
        return equal(from, open) && equal(add(from, length(a)), close);
      })
    );
  };
}

/** Whether two notes are a dotted pair: the first on a crotchet beat, three times as long as the second. */
function isDottedPair(
  tune: Tune,
  places: readonly (RhythmPlace | null)[],
  before: number,
  after: number,
): boolean {
  return (
    places[before]?.half === places[after]?.half &&
    places[before]?.length === '3/2' &&
    places[after]?.length === '1/2' &&
    equal(remainder(quaverOnset(tune, before), fraction(1, 4)), zero)
  );
}
