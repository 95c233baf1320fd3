import type { OpenSite } from '../output/open-site.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { StagedTune } from './made-tune.ts';

/** Where the pipeline gets the tunes of a book from: made now, by whatever thread, or by an earlier build. */
export interface TuneSource {
  /** Their ids, in the order of the book. */
  readonly ids: readonly string[];
  /** Every tune in that order, each as soon as it and those before it are there. */
  readonly made: (site: Pick<OpenSite, 'keepUnchanged' | 'place'>) => AsyncGenerator<StagedTune>;
  /** Study and drawings of a tune that `made` has given: some milliseconds and megabytes each. */
  readonly built: (id: string) => Promise<BuiltTune>;
  readonly opening: (id: string) => Promise<Opening | null>;
  /** Hash of all that these tunes are made from. */
  readonly inputHash: (ids: readonly string[]) => string;
}
