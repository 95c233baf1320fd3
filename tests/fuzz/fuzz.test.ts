import { describe, expect, it } from 'vitest';
import { seed } from '../seed.ts';
import { kinds, makeCase } from './make-case.ts';
import { gatherSeeds } from './seeds.ts';
import { tryCase } from './try-case.ts';

/** A short run of the fuzzer; `npm run fuzz` tries tens of thousands. */
const seeds = gatherSeeds();

describe('the fuzzer', () => {
  it.each(kinds)('%s: sixty inputs end in studies and placed problems', async kind => {
    for (let number = 0; number < 60; number++) {
      await expect(tryCase(makeCase(kind, seed, number, seeds)), `case ${number}`).resolves.toBe(
        undefined,
      );
    }
  });

  it('tries the same for the same seed, and something else for another', () => {
    const texts = (of: number) =>
      kinds.flatMap(kind => [...makeCase(kind, of, 3, seeds).files.values()].map(String));
    expect(texts(1)).toEqual(texts(1));
    expect(texts(1)).not.toEqual(texts(2));
  });
});
