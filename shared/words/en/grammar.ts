import type { Direction } from '../../music/tune.ts';
import { inThrees, joined } from '../text.ts';

/** "1 stroke", "3 strokes". */
export const count = (n: number, thing: string): string => `${n} ${thing}${n === 1 ? '' : 's'}`;

/** "one stroke", "3 strokes". */
export const countOne = (n: number, thing: string): string =>
  n === 1 ? `one ${thing}` : count(n, thing);

/** "2.50", of 2.5 with two `places`. */
export const decimal = (n: number, places: number): string => n.toFixed(places);

/** Thousands in threes: "12,345". */
export const big = (n: bigint): string => inThrees(n, ',');

/** "A, B and C". */
export const listed = (items: readonly string[], joint = ' and '): string => joined(items, joint);

const ordinals = 'first second third fourth fifth sixth seventh eighth'.split(' ');

/** "second"; in figures where there are no words: "9th", "21st". */
export function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  return ordinals[n - 1] ?? `${n}${(teen ? undefined : ['th', 'st', 'nd', 'rd'][n % 10]) ?? 'th'}`;
}

const numbers = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** "five"; figures from 13. */
export const numberWord = (n: number): string => numbers[n] ?? `${n}`;

export const aBow = (d: Direction): string => (d === 'down' ? 'a down-bow' : 'an up-bow');
