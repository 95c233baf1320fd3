/**
 * The known name nearest to a mistyped one, by the fewest letters added, dropped, changed or
 * swapped with their neighbour; null when none is near (more than a third of the letters differ).
 *
 * `nearest('satrt', ['tune', 'bars', 'start'])` is `'start'`.
 */
export function nearest(found: string, known: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Math.max(1, Math.floor(found.length / 3)) + 1;
  for (const name of known) {
    const d = distance(found.toLowerCase(), name.toLowerCase());
    if (d < least) {
      least = d;
      best = name;
    }
  }
  return best;
}

/** Optimal string alignment distance. */
function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? 0;
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let d = Math.min(at(i - 1, j) + 1, (row[j - 1] ?? 0) + 1, at(i - 1, j - 1) + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        d = Math.min(d, at(i - 2, j - 2) + 1);
      }
      row.push(d);
    }
  }
  return at(a.length, b.length);
}
