/**
 * A number to the twentieth of a drawing unit (a staff space is 7.75), as short as it can be written:
 * fine enough that nothing is seen to move when a page is drawn at twice its size.
 */
export function short(x: number): string {
  const twentieths = Math.round(x * perUnit);
  const size = Math.abs(twentieths);
  const whole = Math.floor(size / perUnit);
  const text = (whole === 0 ? '' : `${whole}`) + (fractions[size - whole * perUnit] ?? '');
  return text === '' ? '0' : twentieths < 0 ? `-${text}` : text;
}

const perUnit = 20;

/** The nearest twentieth. */
export const fine = (n: number): number => Math.round(n * perUnit) / perUnit;

/** What each twentieth of a unit adds behind the whole ones. */
const fractions = Array.from({ length: perUnit }, (_, i) =>
  i === 0 ? '' : `${i / perUnit}`.slice(1),
);

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
    const points = numbers.map((n, i) => fine(n + (i % 2 === 0 ? dx : dy)));
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

/** A point or a step as written. */
export const pair = (x: number, y: number): string => run([short(x), short(y)]);

/** An upright or level bar, such as a stem: a line from one end to the other, with a thickness. */
export interface Bar {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly thickness: number;
}

/** Reads a path of four corners as a bar; null where it is none. */
export function readBar(path: string): Bar | null {
  const m = /^M ?(\S+) (\S+) ?L ?(\S+) (\S+) ?L ?(\S+) (\S+) ?L ?(\S+) (\S+?) ?z$/i.exec(path);
  if (!m) return null;
  const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0, dx = 0, dy = 0] = m.slice(1).map(Number);
  const middle = (p: number, q: number): number => (p + q) / 2;
  const size = (p: number, q: number): number => Math.round(Math.abs(p - q) * 100) / 100;
  if (ax === bx && cx === dx && by === cy && ay === dy) {
    const x = middle(ax, cx);
    return { from: [x, ay], to: [x, by], thickness: size(ax, cx) };
  }
  if (ay === by && cy === dy && bx === cx && ax === dx) {
    const y = middle(ay, cy);
    return { from: [ax, y], to: [bx, y], thickness: size(ay, cy) };
  }
  return null;
}

/** A bar as a line from its upper or left end, moved down by `dy`. */
export function barPath({ from, to }: Bar, dy: number): string {
  const [[ax, ay], [bx, by]] = [from, to];
  const [x, y] = [short(Math.min(ax, bx)), fine(Math.min(ay, by) + dy)];
  const step =
    ax === bx ? `v${short(fine(Math.max(ay, by) + dy) - y)}` : `h${short(Math.abs(bx - ax))}`;
  return `M${run([x, short(y)])}${step}`;
}

/** A glyph's outline: one absolute start, then only relative steps. */
export interface Outline {
  readonly x: number;
  readonly y: number;
  readonly steps: string;
}

/** The path of an outline, as abcjs prints it. */
export const printOutline = ({ x, y, steps }: Outline): string => `M ${x} ${y}${steps}`;

/** Reads a path as a glyph's outline; null when it has other absolute points. */
export function readOutline(path: string): Outline | null {
  if (path.includes('L') || path.includes('C')) return null;
  const m = /^M ?(-?[\d.]+(?:e-?\d+)?) (-?[\d.]+(?:e-?\d+)?)([a-y][^A-Z]*)$/.exec(path);
  if (!m?.[3]) return null;
  return { x: Number(m[1]), y: Number(m[2]), steps: m[3] };
}

/**
 * Relative steps of `c`, `l`, `h`, `v`, `m` and `z` written short, to tenths, so rounded that no error
 * adds up: each point comes to lie where it is, within half a tenth. Curves as good as straight
 * become lines, steps that vanish are left out, and a command is not said twice.
 */
export function shortSteps(steps: string): string {
  // Where the pen is, and where the written path has it.
  let [x, y, ox, oy] = [0, 0, 0, 0];
  let out = '';
  let said = 'M';
  for (const [, command = '', rest = ''] of steps.matchAll(/([a-z])([^a-z]*)/g)) {
    const numbers = (rest.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
    if (command === 'z') {
      out += said = 'z';
      continue;
    }
    const size = command === 'c' ? 6 : command === 'h' || command === 'v' ? 1 : 2;
    for (let i = 0; i < numbers.length; i += size) {
      const step = numbers.slice(i, i + size);
      const [along = 0] = step;
      const points = command === 'h' ? [along, 0] : command === 'v' ? [0, along] : step;
      const drawn = command === 'c' && isStraight(points) ? points.slice(4) : points;
      const written = drawn.map((n, k) => tenths(n + (k % 2 === 0 ? x - ox : y - oy)));
      x += points[points.length - 2] ?? 0;
      y += points[points.length - 1] ?? 0;
      const [dx = 0, dy = 0] = written.slice(-2);
      [ox, oy] = [tenths(ox + dx), tenths(oy + dy)];
      if (written.every(n => n === 0)) continue;
      const short = shortStep(command === 'm' ? 'm' : drawn.length === 6 ? 'c' : 'l', written);
      const again = short.startsWith(said) && said !== 'm' && said !== 'z';
      const bare = short.slice(1);
      out += again ? (touches(lastNumber(out), bare) ? ' ' : '') + bare : short;
      said = short[0] ?? '';
    }
  }
  return out;
}

function shortStep(command: 'm' | 'c' | 'l', numbers: readonly number[]): string {
  const [dx = 0, dy = 0] = numbers;
  if (command === 'l' && dy === 0) return `h${short(dx)}`;
  if (command === 'l' && dx === 0) return `v${short(dy)}`;
  return command + run(numbers.map(short));
}

const tenths = (n: number): number => Math.round(n * 10) / 10;

const lastNumber = (path: string): string => /-?[\d.]*$/.exec(path)?.[0] ?? '';

/** Whether a curve keeps within a hundredth of a staff space, and a little, of the line under it. */
function isStraight(points: readonly number[]): boolean {
  const [ax = 0, ay = 0, bx = 0, by = 0, x = 0, y = 0] = points;
  const length = Math.hypot(x, y);
  const off = (px: number, py: number): number =>
    length === 0 ? Math.hypot(px, py) : Math.abs(px * y - py * x) / length;
  const within = (px: number, py: number): boolean => {
    const t = length === 0 ? 0 : (px * x + py * y) / length;
    return t > -0.1 && t < length + 0.1;
  };
  // A curve keeps within three quarters of how far its guides stand off.
  return 0.75 * Math.max(off(ax, ay), off(bx, by)) < 0.06 && within(ax, ay) && within(bx, by);
}
