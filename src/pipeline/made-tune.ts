import type { Problem } from '../../shared/problem.ts';
import type { Content, SiteFile } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { TuneCard } from '../pages/tune-card.ts';

/** Everything made of one tune. */
export interface MadeTune {
  readonly summary: TuneSummary;
  /** Its study and drawings. */
  readonly built: BuiltTune;
  /** Its first phrase; null where its notes may not be shown, or could not be drawn. */
  readonly opening: Opening | null;
  /** The files beside its page, then the pages that show no other tune. */
  readonly files: readonly MadeFile[];
}

/** What lists, messages and later builds need of a tune: little, so that those of a whole book are held. */
export interface TuneSummary {
  readonly card: TuneCard;
  /** Its ABC could be read. */
  readonly isStudied: boolean;
  readonly problems: readonly Problem[];
  /** Paths of the files that stand beside its page. */
  readonly files: readonly string[];
}

export interface MadeFile {
  readonly path: string;
  readonly inputHash: string;
  readonly content: Content;
}

/** A tune whose files are ready for the site: staged, kept there, or still to be made. */
export interface StagedTune {
  readonly summary: TuneSummary;
  /** Those that are still to be put. */
  readonly files: readonly SiteFile[];
}
