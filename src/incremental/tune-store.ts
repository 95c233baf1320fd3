import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import { hashOf } from '../pipeline/hash-of.ts';
import type { MadeTune } from '../pipeline/made-tune.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';
import { openCache } from './open-cache.ts';

/**
 * What is kept of tunes besides what stands in the site, by the hash of their input. undefined: nothing
 * whole is kept. Threads may share a folder: entries are written whole.
 */
export interface TuneStore {
  /** Study and drawings, of tunes that more than their own page asks for: read back in some 3 ms. */
  readonly built: (inputHash: string) => BuiltTune | undefined;
  /** First phrase, of every tune, since a list has many in one file. */
  readonly opening: (inputHash: string) => Opening | null | undefined;
  readonly keep: (task: TuneTask, made: MadeTune) => void;
}

/** `program`: hash of the program, which what another program made is not taken over from. */
export function tuneStore(folder: string, program: string): TuneStore {
  const cache = openCache(folder);
  const nameOf = (inputHash: string): string => tuneEntry(program, inputHash);
  return {
    built: inputHash => cache.read(nameOf(inputHash)) as BuiltTune | undefined,
    opening: inputHash => cache.read(openingEntry(nameOf(inputHash))) as Opening | null | undefined,
    keep({ inputHash, isShared }, { built, opening }) {
      if (isShared) cache.write(nameOf(inputHash), built);
      cache.write(openingEntry(nameOf(inputHash)), opening);
    },
  };
}

/** Names of the entries in the cache that belong to these tunes. */
export const entriesOf = (program: string, inputHashes: Iterable<string>): ReadonlySet<string> =>
  new Set(
    [...inputHashes]
      .map(inputHash => tuneEntry(program, inputHash))
      .flatMap(name => [name, openingEntry(name)]),
  );

const tuneEntry = (program: string, inputHash: string): string => hashOf(program, inputHash);
const openingEntry = (name: string): string => `${name}-opening`;
