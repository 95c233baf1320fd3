/** Exact times, in whole notes, always in lowest terms with a positive denominator. */
export interface Fraction {
  readonly n: number;
  readonly d: number;
}

/** n/d in lowest terms. Throws where d is 0, or n or d no safe integer. */
export function fraction(n: number, d = 1): Fraction {
  if (d === 0 || !Number.isSafeInteger(n) || !Number.isSafeInteger(d)) {
    throw new RangeError(`no exact fraction: ${n}/${d}`);
  }
  const g = gcd(Math.abs(n), Math.abs(d)) * Math.sign(d);
  return { n: n / g + 0, d: d / g };
}

/** 0/1. */
export const zero: Fraction = { n: 0, d: 1 };

/** a + b, in lowest terms. */
export function add(a: Fraction, b: Fraction): Fraction {
  if (a.d === b.d) return fraction(a.n + b.n, a.d);
  // Over the least common denominator, so that a long sum of odd tuplets stays exact.
  const g = gcd(a.d, b.d);
  return fraction(a.n * (b.d / g) + b.n * (a.d / g), a.d * (b.d / g));
}
/** a − b, in lowest terms. */
export const subtract = (a: Fraction, b: Fraction): Fraction => add(a, { n: -b.n, d: b.d });
/** a · b, in lowest terms. */
export const multiply = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.n, a.d * b.d);
/** a / b, in lowest terms. Throws where b is 0. */
export const divide = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.d, a.d * b.n);

/** Negative where a is less than b, 0 where they are equal, positive where a is more. */
export const compare = (a: Fraction, b: Fraction): number => a.n * b.d - b.n * a.d;

/** Whether two fractions are the same number. */
export const equal = (a: Fraction, b: Fraction): boolean => a.n === b.n && a.d === b.d;

/** `1/8`, `0`, `3`. */
export const fractionText = (a: Fraction): string => (a.d === 1 ? `${a.n}` : `${a.n}/${a.d}`);

/** Reads `1/8` or `3`; null when it is neither, has a zero below, or is past safe integers. */
export function parseFraction(text: string): Fraction | null {
  const m = /^\s*(-?\d+)(?:\/(\d+))?\s*$/.exec(text);
  const [n, d] = [Number(m?.[1]), Number(m?.[2] ?? 1)];
  return d === 0 || !Number.isSafeInteger(n) || !Number.isSafeInteger(d) ? null : fraction(n, d);
}

/** The nearest float, for drawing, sound and rounding down; two are never compared by it. */
export const toNumber = (a: Fraction): number => a.n / a.d;

/** 2⁷ · 3² · 5 · 7: what 128ths of a whole note and tuplets of 2 to 10 notes divide it into. */
const grid = 40_320;

/**
 * The fraction a float stands for: the nearest multiple of 1/40320. Exact for halvings down to a
 * 128th and their dots, for thirds, fifths, sevenths and ninths of them; anything finer is rounded.
 */
export const fromFloat = (x: number): Fraction => fraction(Math.round(x * grid), grid);

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x || 1;
}
