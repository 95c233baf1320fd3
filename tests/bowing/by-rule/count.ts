/** Ways to share n notes out between strokes, and those of them that leave the bow as asked. */
export interface Ways {
  readonly all: bigint;
  readonly arriving: bigint;
}

/** `turns`: the bow is to come out the other way than it went in, so an odd number of strokes is wanted. */
export const waysOf = (notes: number, turns: boolean): Ways =>
  notes - 1 <= 20 ? byEnumeration(notes, turns) : byBinomials(notes, turns);

/** Every set of places between two notes at which the bow turns. */
export function byEnumeration(notes: number, turns: boolean): Ways {
  let arriving = 0;
  const all = 2 ** (notes - 1);
  for (let places = 0; places < all; places++) {
    let strokes = 1;
    for (let bits = places; bits !== 0; bits &= bits - 1) strokes++;
    if ((strokes % 2 === 1) === turns) arriving++;
  }
  return { all: BigInt(all), arriving: BigInt(arriving) };
}

/** By how many times the bow turns: n - 1 places, k of them chosen. */
export function byBinomials(notes: number, turns: boolean): Ways {
  const places = BigInt(notes - 1);
  let [all, arriving, chosen] = [0n, 0n, 1n];
  for (let k = 0n; k <= places; k++) {
    all += chosen;
    if ((k % 2n === 0n) === turns) arriving += chosen;
    chosen = (chosen * (places - k)) / (k + 1n);
  }
  return { all, arriving };
}
