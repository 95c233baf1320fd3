import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { Cache } from './open-cache.ts';

/** What is kept of tunes, by their keys, besides what stands in the site; undefined: it is not there. */
export interface TuneCache {
  /** Study and drawings: of tunes that more than their own page asks for. */
  readonly built: (key: string) => BuiltTune | undefined;
  readonly keepBuilt: (key: string, built: BuiltTune) => void;
  /** How a tune opens, kept of each, since a list has many in one file. */
  readonly opening: (key: string) => Opening | null | undefined;
  readonly keepOpening: (key: string, opening: Opening | null) => void;
}

const openingOf = (key: string): string => `${key}-opening`;

export const tuneCache = (cache: Cache): TuneCache => ({
  built: key => cache.read(key) as BuiltTune | undefined,
  keepBuilt: (key, built) => cache.write(key, built),
  opening: key => cache.read(openingOf(key)) as Opening | null | undefined,
  keepOpening: (key, opening) => cache.write(openingOf(key), opening),
});

/** The key of the tune that an entry of the cache belongs to. */
export const tuneOfEntry = (name: string): string => name.replace(/-opening$/, '');
