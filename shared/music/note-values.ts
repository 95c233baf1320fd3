import { compare, divide, type Fraction, fraction, multiply, subtract } from './fraction.ts';

/** A note value: its name in MusicXML, its dots and its length. */
export interface NoteValue {
  readonly type: string;
  readonly dots: number;
  /** In whole notes. */
  readonly length: Fraction;
}

const types: readonly (readonly [string, Fraction])[] = [
  ['breve', fraction(2)],
  ['whole', fraction(1)],
  ['half', fraction(1, 2)],
  ['quarter', fraction(1, 4)],
  ['eighth', fraction(1, 8)],
  ['16th', fraction(1, 16)],
  ['32nd', fraction(1, 32)],
  ['64th', fraction(1, 64)],
  ['128th', fraction(1, 128)],
];

/** Factor of a length with no, one and two dots. */
const dotted: readonly Fraction[] = [fraction(1), fraction(3, 2), fraction(7, 4)];

const values: readonly NoteValue[] = types
  .flatMap(([type, plain]) =>
    dotted.map((by, dots) => ({ type, dots, length: fraction(plain.n * by.n, plain.d * by.d) })),
  )
  .toSorted((a, b) => compare(b.length, a.length));

/**
 * The note values that add up to a length, longest first, to be tied: five quavers are a minim and a
 * quaver. Null where eight values do not add up to it.
 */
function noteValues(length: Fraction): readonly NoteValue[] | null {
  const found: NoteValue[] = [];
  let left = length;
  while (left.n > 0) {
    const next = values.find(v => compare(v.length, left) <= 0);
    if (!next || found.length > 8) return null;
    found.push(next);
    left = subtract(left, next.length);
  }
  return found.length > 0 ? found : null;
}

/** `p` notes in the time of `q`. */
export interface Ratio {
  readonly p: number;
  readonly q: number;
}

/** A sounded length as note values: one, or several tied, all in one tuplet ratio (null for none). */
export interface WrittenLength {
  readonly ratio: Ratio | null;
  /** `sounds` in whole notes. `value` is null where no note values add up to the length. */
  readonly pieces: readonly { readonly value: NoteValue | null; readonly sounds: Fraction }[];
}

/**
 * Converts a length in whole notes to note values, in the ratio of its tuplet (null outside one). A
 * length outside a tuplet whose denominator is no power of two gets a ratio of its own: a third of a
 * crotchet, written `A/3`, is a quaver of three in the time of two.
 */
export function writeLength(sounded: Fraction, tuplet: Ratio | null): WrittenLength {
  const ratio = tuplet ?? oddRatio(sounded);
  const values = noteValues(ratio ? multiply(sounded, fraction(ratio.p, ratio.q)) : sounded);
  if (values === null) return { ratio: null, pieces: [{ value: null, sounds: sounded }] };
  const sounds = (length: Fraction): Fraction =>
    ratio ? multiply(length, fraction(ratio.q, ratio.p)) : length;
  return { ratio, pieces: values.map(value => ({ value, sounds: sounds(value.length) })) };
}

/** Three in the time of two, five of four, seven of four; null for lengths of halvings and dots. */
function oddRatio(length: Fraction): Ratio | null {
  let odd = length.d;
  while (odd % 2 === 0) odd /= 2;
  return odd === 1 ? null : { p: odd, q: 2 ** Math.floor(Math.log2(odd)) };
}

/** The length divided by `unit`. Throws where that is no whole number. */
export function countOf(length: Fraction, unit: Fraction): number {
  const count = divide(length, unit);
  if (count.d !== 1)
    throw new Error(`${length.n}/${length.d} is no multiple of ${unit.n}/${unit.d}`);
  return count.n;
}

/** The fewest divisions of a crotchet of which each length (in whole notes) is a multiple. */
export function divisionsFor(lengths: readonly Fraction[]): number {
  let all = 1;
  for (const { d } of lengths) {
    // Lengths are in lowest terms, so that of four times one only its denominator can lose a 2 or 4.
    const own = d / common(4, d);
    if (all % own !== 0) all = (all * own) / common(all, own);
  }
  return all;
}

const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));
