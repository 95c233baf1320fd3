/** One side of a sheet: upper left, upper right, lower left, lower right; null for an empty page. */
export type Side = readonly [number | null, number | null, number | null, number | null];

/**
 * Orders small pages on sheets of paper for a booklet: each sheet is printed on both sides (turned over its long
 * edge) and cut across the middle, and the halves are laid one in another and folded.
 *
 * A half sheet, folded, has four pages. In a booklet of P pages numbered from 0, half sheet s has
 * outside P - 1 - 2s on the left and 2s on the right, and inside 2s + 1 and P - 2 - 2s (saddle
 * stitching, common practice). Turned over its long edge a sheet shows its left half behind its
 * right, so that 2s + 1 stands behind 2s. Sheet j holds half sheets 2j above and 2j + 1 below.
 *
 * Eight pages: sides (7, 0, 5, 2) and (1, 6, 3, 4).
 */
export function imposePages(count: number): readonly Side[] {
  const all = Math.max(8, Math.ceil(count / 8) * 8);
  const page = (n: number): number | null => (n < count ? n : null);
  const sides: Side[] = [];
  for (let s = 0; s < all / 4; s += 2) {
    const outside = (h: number) => [page(all - 1 - 2 * h), page(2 * h)] as const;
    const inside = (h: number) => [page(2 * h + 1), page(all - 2 - 2 * h)] as const;
    sides.push([...outside(s), ...outside(s + 1)], [...inside(s), ...inside(s + 1)]);
  }
  return sides;
}
