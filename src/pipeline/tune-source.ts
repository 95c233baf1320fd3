import type { OpenSite } from '../output/open-site.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { StagedTune } from './made-tune.ts';

/** Gives the pipeline the tunes of a book, made now in any thread, or taken over from an earlier build. */
export interface TuneSource {
  /** Ids of the tunes, in the order of the book. */
  readonly ids: readonly string[];
  /** Yields every tune in that order, each as soon as it and those before it are ready. */
  readonly made: (site: Pick<OpenSite, 'keepUnchanged' | 'place'>) => AsyncGenerator<StagedTune>;
  /** Reads back, or makes again, the study and drawings of a tune that `made` has yielded: some ms and MB. */
  readonly built: (id: string) => Promise<BuiltTune>;
  /** The first phrase; null where the notes may not be shown, or could not be drawn. */
  readonly opening: (id: string) => Promise<Opening | null>;
  /** The input hashes of these tunes, as one text. Throws for an unknown id. */
  readonly inputHash: (ids: readonly string[]) => string;
}
