/** Exact times, in whole notes, always in lowest terms with a positive denominator. */
export interface Fraction {
  readonly n: number;
  readonly d: number;
}

/** n/d in lowest terms. Throws on a zero denominator or a value past safe integers. */
export function fraction(n: number, d = 1): Fraction {
  if (d === 0 || !Number.isSafeInteger(n) || !Number.isSafeInteger(d)) {
    throw new RangeError(`no exact fraction: ${n}/${d}`);
  }
  const g = gcd(Math.abs(n), Math.abs(d)) * Math.sign(d);
  return { n: n / g + 0, d: d / g };
}

export const zero: Fraction = { n: 0, d: 1 };

export function add(a: Fraction, b: Fraction): Fraction {
  if (a.d === b.d) return fraction(a.n + b.n, a.d);
  // Over the least common denominator, so that a long sum of odd tuplets stays exact.
  const g = gcd(a.d, b.d);
  return fraction(a.n * (b.d / g) + b.n * (a.d / g), a.d * (b.d / g));
}
export const subtract = (a: Fraction, b: Fraction): Fraction => add(a, { n: -b.n, d: b.d });
export const multiply = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.n, a.d * b.d);
export const divide = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.d, a.d * b.n);

/** Negative, zero or positive, as a is less than, equal to or more than b. */
export const compare = (a: Fraction, b: Fraction): number => a.n * b.d - b.n * a.d;
export const equal = (a: Fraction, b: Fraction): boolean => a.n === b.n && a.d === b.d;

/** `1/8`, `0`, `3`. */
export const fractionText = (a: Fraction): string => (a.d === 1 ? `${a.n}` : `${a.n}/${a.d}`);

/** Reads `1/8` or `3`; null when it is neither, or past counting. */
export function parseFraction(text: string): Fraction | null {
  const m = /^\s*(-?\d+)(?:\/(\d+))?\s*$/.exec(text);
  const [n, d] = [Number(m?.[1]), Number(m?.[2] ?? 1)];
  return d === 0 || !Number.isSafeInteger(n) || !Number.isSafeInteger(d) ? null : fraction(n, d);
}

/** A plain number, for drawing and sound only; never for comparing. */
export const toNumber = (a: Fraction): number => a.n / a.d;

/**
 * The fraction a float stands for: the nearest with a denominator up to 5760, which holds every
 * length that dots, nested halvings and the tuplets of ABC 2.1 make.
 */
export function fromFloat(x: number): Fraction {
  const scaled = Math.round(x * 5760 * 7);
  return fraction(scaled, 5760 * 7);
}

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x || 1;
}
