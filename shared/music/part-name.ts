import { at } from '../must.ts';

/**
 * The name of a part in its bars' names, letters only, and taken by no other part: its `P:` with
 * figures as Roman ones (`V 2` is `Vii`) and primes where that is taken; null or a `P:` without
 * letters gives the first free of A to Z, AA, BB.
 */
export function partName(label: string | null, taken: ReadonlySet<string>): string {
  const wished = (label ?? '')
    .replace(/\d+/g, n => roman(Number(n)))
    .replace(/[^A-Za-z']/g, '')
    .replace(/^'+/, '');
  return wished === '' ? freeLetter(taken) : primed(wished, taken);
}

const primed = (name: string, taken: ReadonlySet<string>): string =>
  taken.has(name) ? primed(`${name}'`, taken) : name;

function freeLetter(taken: ReadonlySet<string>): string {
  for (let n = 0; ; n++) {
    const letter = String.fromCharCode(65 + (n % 26)).repeat(1 + Math.floor(n / 26));
    if (!taken.has(letter)) return letter;
  }
}

const tens = ['', 'x', 'xx', 'xxx'];
const units = ['', 'i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix'];

/** Small Roman figures of 1 to 39; any other number as its last one of those. */
const roman = (n: number): string => at(tens, Math.floor(n / 10) % 4) + at(units, n % 10);
