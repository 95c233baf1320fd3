import type { Problem } from '../../shared/problem.ts';
import type { Content, SiteFile } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { TuneCard } from '../pages/tune-card.ts';

/** All results of making one tune. */
export interface MadeTune {
  readonly summary: TuneSummary;
  /** Study and drawings. */
  readonly built: BuiltTune;
  /** The first phrase; null where the notes may not be shown, or could not be drawn. */
  readonly opening: Opening | null;
  /** The files beside its page, then the pages that show no other tune. */
  readonly files: readonly MadeFile[];
}

/** What lists, messages and later builds need of a tune. It is small, since those of the whole book stay in memory. */
export interface TuneSummary {
  readonly card: TuneCard;
  /** Whether its ABC could be parsed. */
  readonly isStudied: boolean;
  readonly problems: readonly Problem[];
  /** Paths of the files that stand beside its page. */
  readonly files: readonly string[];
}

/** A file of the site, with the hash of every input that it was made from. */
export interface MadeFile {
  readonly path: string;
  readonly inputHash: string;
  readonly content: Content;
}

/** A tune whose files are ready for the site: staged, unchanged in the site, or to be made when they are put. */
export interface StagedTune {
  readonly summary: TuneSummary;
  /** The files that are still to be put into the site. */
  readonly files: readonly SiteFile[];
}
