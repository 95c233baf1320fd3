import type { Direction } from '../../music/tune.ts';
import { inThrees, joined } from '../text.ts';

/** „1 Strich“, „3 Striche“: a number with its noun. */
export const counted = (n: number, one: string, other: string): string =>
  `${inThrees(n, '.')} ${n === 1 ? one : other}`;

/** Thousands in threes: „12.345“. */
export const big = (n: bigint): string => inThrees(n, '.');

/** „2,50“ of 2.5 with two `places`. */
export const decimal = (n: number, places: number): string => n.toFixed(places).replace('.', ',');

export const strokes = (n: number): string => counted(n, 'Strich', 'Striche');
/** In the dative, after „in“. */
export const strokesDative = (n: number): string => counted(n, 'Strich', 'Strichen');
export const notes = (n: number): string => counted(n, 'Note', 'Noten');

/** „A, B und C“. */
export const listed = (items: readonly string[], joint = ' und '): string => joined(items, joint);

const ordinals = 'erste zweite dritte vierte fünfte sechste siebte achte'.split(' ');

/** „zweite“; with an `ending`, „zweiten“; „9.“ from where there are no words. */
export const ordinal = (n: number, ending = ''): string =>
  ordinals[n - 1] === undefined ? `${n}.` : `${ordinals[n - 1]}${ending}`;

const numbers = 'keine eine zwei drei vier fünf sechs sieben acht neun zehn elf zwölf'.split(' ');

/** „fünf“; figures from 13. */
export const numberWord = (n: number): string => numbers[n] ?? `${n}`;

export const bow = (d: Direction): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');
