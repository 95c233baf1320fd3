import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import { hashOf } from '../pipeline/hash-of.ts';
import type { MadeTune } from '../pipeline/made-tune.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';
import { openCache } from './open-cache.ts';

/**
 * Tunes in the cache, by input hash: what later pages and builds need and the site does not contain. A
 * result is undefined where the entry is missing or damaged. Threads may share a folder, since entries
 * are replaced whole.
 */
export interface TuneStore {
  /** Study and drawings of a tune that further pages or PDFs show. Reading them takes some 3 ms. */
  readonly built: (inputHash: string) => BuiltTune | undefined;
  /** The first phrase, kept of every tune, since each file of openings has fifty; null: none may be shown. */
  readonly opening: (inputHash: string) => Opening | null | undefined;
  /** Stores a tune that has been made. */
  readonly keep: (task: TuneTask, made: MadeTune) => void;
}

/** Opens the store in the cache `folder`. `program`: hash of the program; entries of another are not found. */
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

/** Names of the cache entries that belong to these tunes. */
export const entriesOf = (program: string, inputHashes: Iterable<string>): ReadonlySet<string> =>
  new Set(
    [...inputHashes]
      .map(inputHash => tuneEntry(program, inputHash))
      .flatMap(name => [name, openingEntry(name)]),
  );

const tuneEntry = (program: string, inputHash: string): string => hashOf(program, inputHash);
const openingEntry = (name: string): string => `${name}-opening`;
