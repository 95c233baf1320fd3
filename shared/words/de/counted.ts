import { madeOnce } from '../made-once.ts';

const plurals = madeOnce(() => new Intl.PluralRules('de'));
const numbers = madeOnce(() => new Intl.NumberFormat('de'));

/** „1 Strich“, „3 Striche“: a number with its noun. */
export const counted = (n: number, one: string, other: string): string =>
  `${numbers().format(n)} ${plurals().select(n) === 'one' ? one : other}`;

/** Long numbers, in threes: „1.234“. */
export const number = (n: number | bigint): string => numbers().format(n);

export const strokes = (n: number): string => counted(n, 'Strich', 'Striche');
/** In the dative, after „in“. */
export const strokesDative = (n: number): string => counted(n, 'Strich', 'Strichen');
export const notes = (n: number): string => counted(n, 'Note', 'Noten');

/** „A, B und C“. */
export const listed = (items: readonly string[], joint = ' und '): string =>
  items.length < 2
    ? items.join('')
    : `${items.slice(0, -1).join(', ')}${joint}${items.at(-1) ?? ''}`;

const ordinals = [
  '',
  'erste',
  'zweite',
  'dritte',
  'vierte',
  'fünfte',
  'sechste',
  'siebte',
  'achte',
];

/** „zweite“; with an `ending`, „zweiten“. */
export const ordinal = (n: number, ending = ''): string =>
  n < ordinals.length ? `${ordinals[n]}${ending}` : `${n}.`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
