/** A number to the tenth of a drawing unit (a staff space is 7.75), as short as it can be written. */
export const short = (x: number): string => trim((Math.round(x * 10) / 10).toFixed(1));

const trim = (text: string): string => {
  const bare = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  const lead = bare.replace(/^(-?)0\./, '$1.');
  return lead === '-0' || lead === '' || lead === '-' ? '0' : lead;
};

/** Numbers side by side, with a space only where they would run together: `1.5.2-3`. */
const run = (numbers: readonly string[]): string =>
  numbers.reduce(
    (text, n, i) => text + (i > 0 && touches(numbers[i - 1] ?? '', n) ? ' ' : '') + n,
    '',
  );

const touches = (before: string, after: string): boolean =>
  !after.startsWith('-') && !(after.startsWith('.') && before.includes('.'));

/**
 * A path of absolute M, L, C and Z, moved by (dx, dy), written short: steps from point to point,
 * rounded so that no error adds up, `h` and `v` where a step is straight. It is to be filled: Z is
 * left out.
 */
export function shortPath(path: string, dx = 0, dy = 0): string {
  let out = '';
  let [x, y] = [0, 0];
  for (const [, command, rest] of path.matchAll(/([MLCZz])([^MLCZz]*)/g)) {
    const numbers = (rest?.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
    const points = numbers.map((n, i) => tenths(n + (i % 2 === 0 ? dx : dy)));
    const [endX, endY] = [points[points.length - 2] ?? x, points[points.length - 1] ?? y];
    if (command === 'M') out += `M${run([short(endX), short(endY)])}`;
    else if (command === 'C') {
      out += `c${run(points.map((n, i) => short(n - (i % 2 === 0 ? x : y))))}`;
    } else if (command === 'L') {
      if (endY === y) out += `h${short(endX - x)}`;
      else if (endX === x) out += `v${short(endY - y)}`;
      else out += `l${run([short(endX - x), short(endY - y)])}`;
    } // A filled shape closes by itself.
    [x, y] = [endX, endY];
  }
  return out;
}

const tenths = (n: number): number => Math.round(n * 10) / 10;

/** A glyph's outline: one absolute start, then only relative steps. */
export interface Outline {
  readonly x: number;
  readonly y: number;
  readonly steps: string;
}

/** Reads a path as a glyph's outline; null when it has other absolute points. */
export function readOutline(path: string): Outline | null {
  const m = /^M ?(-?[\d.]+(?:e-?\d+)?) (-?[\d.]+(?:e-?\d+)?)([a-y][^A-Z]*)$/.exec(path);
  if (!m?.[3]) return null;
  return { x: Number(m[1]), y: Number(m[2]), steps: m[3] };
}

/** Relative steps written short, to hundredths. */
export const shortSteps = (steps: string): string =>
  steps.replace(/([a-z])([^a-z]*)/g, (_, command: string, rest: string) => {
    const numbers = (rest.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(n => trim(Number(n).toFixed(2)));
    return command + run(numbers);
  });
