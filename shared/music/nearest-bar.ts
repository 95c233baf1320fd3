import { nearest } from '../nearest.ts';

/**
 * The bar, or the note of a bar, that a teacher most likely meant by a name that the tune has not:
 * the closest number in the same part or bar, else the name spelt most alike; null where none is.
 *
 * `nearestBar('A9', ['A1', …, 'A8/1', 'A8/2', 'B1', …])` is `'A8/1'`.
 */
export function nearestBar(found: string, known: readonly string[]): string | null {
  const [part, number] = counted(found);
  const ofPart = known.flatMap(name => {
    const [its, n] = counted(name);
    return its === part && n !== null && number !== null
      ? [{ name, off: Math.abs(n - number) }]
      : [];
  });
  const [closest] = ofPart.sort((a, b) => a.off - b.off);
  return closest?.name ?? nearest(found, known);
}

/** A name without its ending, as what stands before its last number and the number: `A8/2` is `['A', 8]`, `A8:3` is `['A8:', 3]`. The number is null where none stands. */
function counted(name: string): readonly [part: string, number: number | null] {
  const [, part = name, digits] = /^(.*?)(\d+)$/.exec(name.replace(/\/[\d,]+$/, '')) ?? [];
  return [part, digits === undefined ? null : Number(digits)];
}
