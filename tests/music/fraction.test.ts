import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  compare,
  divide,
  equal,
  type Fraction,
  fraction,
  fractionText,
  fromFloat,
  multiply,
  parseFraction,
  subtract,
  toNumber,
} from '../../shared/music/fraction.ts';

const small = fc
  .tuple(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: 1, max: 1000 }))
  .map(([n, d]) => fraction(n, d));

/** The same number as a pair of big integers, which no sum can overflow. */
const big = ({ n, d }: Fraction): readonly [bigint, bigint] => [BigInt(n), BigInt(d)];
const isSame = (a: Fraction, [n, d]: readonly [bigint, bigint]): boolean =>
  BigInt(a.n) * d === n * BigInt(a.d);
const isLowest = ({ n, d }: Fraction): boolean => {
  let [x, y] = [Math.abs(n), d];
  while (y !== 0) [x, y] = [y, x % y];
  return d > 0 && x === 1;
};

describe('exact fractions', () => {
  it('reckon as big integers do, in lowest terms', () => {
    fc.assert(
      fc.property(small, small, (a, b) => {
        const [[p, q], [r, s]] = [big(a), big(b)];
        const found: [Fraction, readonly [bigint, bigint]][] = [
          [add(a, b), [p * s + r * q, q * s]],
          [subtract(a, b), [p * s - r * q, q * s]],
          [multiply(a, b), [p * r, q * s]],
          ...(b.n === 0 ? [] : [[divide(a, b), [p * s, q * r]] as [Fraction, [bigint, bigint]]]),
        ];
        for (const [own, wanted] of found) {
          expect(isSame(own, wanted)).toBe(true);
          expect(isLowest(own)).toBe(true);
        }
        expect(Math.sign(compare(a, b))).toBe(Math.sign(toNumber(a) - toNumber(b)));
        expect(equal(a, b)).toBe(p * s === r * q);
        expect(parseFraction(fractionText(a))).toEqual(a);
      }),
    );
  });
  it('stay exact over a long sum of odd tuplets', () => {
    // Over the product of the denominators, not their least multiple, this would pass 2^53.
    const parts = [3, 5, 7, 9, 11, 13].flatMap(d =>
      Array.from({ length: 4 }, () => fraction(1, d)),
    );
    const sum = [...parts, ...parts, ...parts].reduce(add);
    expect(fractionText(sum)).toBe(
      fractionText(fraction(12 * (15015 + 9009 + 6435 + 5005 + 4095 + 3465), 45045)),
    );
  });
  it('have one zero and a positive denominator', () => {
    expect(fraction(0, -4)).toEqual({ n: 0, d: 1 });
    expect(fraction(3, -6)).toEqual({ n: -1, d: 2 });
    expect(fraction(5)).toEqual({ n: 5, d: 1 });
  });
  it.each([
    [1, 0],
    [2 ** 53, 1],
    [1, 2 ** 53],
    [1.5, 1],
    [Number.NaN, 1],
  ])('are refused for %s/%s', (n, d) => expect(() => fraction(n, d)).toThrow(RangeError));
});

describe('fractions in writing', () => {
  it.each([
    ['1/8', '1/8'],
    [' 3 ', '3'],
    ['-2/4', '-1/2'],
    ['6/3', '2'],
  ])('%s is read as %s', (text, read) => {
    const found = parseFraction(text);
    expect(found && fractionText(found)).toBe(read);
  });
  it.each([
    '',
    '1/',
    '/8',
    '1/0',
    '1.5',
    '1/-8',
    'x1/8',
    '1/8x',
    '99999999999999999999',
    '1/99999999999999999999',
  ])('%j is not read', text => expect(parseFraction(text)).toBeNull());
});

it('floats stand for the lengths of notes: halvings, dots, and tuplets of 2 to 10', () => {
  for (let halvings = 1; halvings <= 128; halvings *= 2) {
    for (const dot of [1, 3]) {
      for (const tuplet of [1, 3, 5, 7, 9]) {
        // A dotted 128th, or a third of one, is finer than what is kept.
        if (halvings * tuplet * (dot === 3 ? 2 : 1) > 128 * tuplet) continue;
        const length = fraction(dot, halvings * tuplet * (dot === 3 ? 2 : 1));
        expect(fromFloat(toNumber(length))).toEqual(length);
      }
    }
  }
});
