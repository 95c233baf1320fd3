/**
 * A small generator of even-handed choices, the same for the same seed on every machine: a counter
 * of 32 bits stepped by the golden ratio, each value scrambled by two multiplications. It is the
 * 32-bit form of SplitMix (Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
 * 2014), all in integer arithmetic, so that Node and every browser agree bit for bit. It is for
 * drills, not for secrets.
 *
 * The name is stirred into the seed (FNV-1a), so that seed 1 of two kinds of drill does not pick the
 * same bars.
 */
export interface Dice {
  /** A whole number from 0 to n - 1; n from 1. */
  readonly below: (n: number) => number;
  /** One of the list, which must not be empty. */
  readonly pick: <T>(list: readonly T[]) => T;
  /** The list in another order. */
  readonly shuffle: <T>(list: readonly T[]) => T[];
}

/** Dice for a name and a seed. Each call moves them on. */
export function rollDice(name: string, seed: number): Dice {
  let state = (stir(name) ^ Math.imul(Math.trunc(seed), 0x9e3779b1)) >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let x = state;
    x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
    x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
    return (x ^ (x >>> 16)) >>> 0;
  };
  const below = (n: number): number => Math.floor((next() / 2 ** 32) * n);
  const shuffle = <T>(list: readonly T[]): T[] => {
    const mixed = [...list];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = below(i + 1);
      [mixed[i], mixed[j]] = [mixed[j] as T, mixed[i] as T];
    }
    return mixed;
  };
  return { below, shuffle, pick: list => list[below(list.length)] as (typeof list)[number] };
}

function stir(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) {
    hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}
