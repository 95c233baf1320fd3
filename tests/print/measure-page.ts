/** Lengths read back off a printed page, drawn as SVG by a second program. Millimetres. */

const millimetre = 25.4 / 72;

interface Line {
  readonly x: number;
  readonly y: number;
  readonly length: number;
}

/**
 * Heights of the staves on a page: sets of five level lines of one length under one another, four
 * equal gaps between them.
 */
export function staffHeights(svg: string): readonly number[] {
  // Staves side by side stand at the same heights, so lines are told apart by where they begin.
  const columns = new Map<string, Line[]>();
  for (const line of levelLines(svg)) {
    const key = `${line.x.toFixed(1)} ${line.length.toFixed(1)}`;
    columns.set(key, [...(columns.get(key) ?? []), line]);
  }
  return [...columns.values()].flatMap(lines =>
    lines.flatMap((top, i) => {
      const [, second, , , last] = lines.slice(i, i + 5);
      const gap = (second?.y ?? 0) - top.y;
      const even = lines.slice(i, i + 5).every((l, k) => Math.abs(l.y - top.y - k * gap) < 0.05);
      return last && even && gap > 0.5 ? [(last.y - top.y) * millimetre] : [];
    }),
  );
}

/** Level strokes longer than 10 mm, from the top of the page down; a path may hold several. */
function levelLines(svg: string): readonly Line[] {
  const strokes = (svg.match(/<path [^>]*>/g) ?? []).filter(tag => /stroke-width/.test(tag));
  const lines = strokes.flatMap(tag => {
    const d = / d="([^"]*)"/.exec(tag)?.[1] ?? '';
    const matrix = /matrix\(([^)]+)\)/.exec(tag)?.[1]?.split(/[, ]+/).map(Number) ?? [];
    const [a = 1, , , e = 1, tx = 0, ty = 0] = matrix;
    return [...d.matchAll(/M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+)/g)].flatMap(m => {
      const [x, y, to, level] = m.slice(1).map(Number) as [number, number, number, number];
      if (y !== level) return [];
      return [{ x: a * x + tx, y: e * y + ty, length: Math.abs(a * (to - x)) }];
    });
  });
  return lines.filter(l => l.length * millimetre > 10).toSorted((p, q) => p.y - q.y);
}

/** Every colour that a page is drawn in, as `[red, green, blue]` in hundredths. */
export const colours = (svg: string): readonly (readonly number[])[] =>
  [...svg.matchAll(/rgb\(([\d.]+)%,\s*([\d.]+)%,\s*([\d.]+)%\)/g)].map(m => m.slice(1).map(Number));
