import type { AnchorRequest, BowingStudy, Direction } from './bowing/bowing.ts';
import type { BowingSettings } from './bowing/settings.ts';
import type { Fingering, Tuning } from './fingering/fingering.ts';
import type { Performance } from './music/performance.ts';
import type { Tune } from './music/tune.ts';
import type { Problem } from './problem.ts';
import type { SectionMap } from './sections/section-map.ts';

/** Everything that Bowbook works out about one tune. */
export interface Study {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly fingering: Fingering;
  readonly map: SectionMap;
  readonly bowing: BowingStudy;
  readonly problems: readonly Problem[];
}

/** What a study needs to know besides the tune. */
export interface StudyRequest {
  readonly tuning: Tuning;
  readonly bowing: BowingSettings;
  /** `start=`: the first stroke, where the teacher says it. */
  readonly start: Direction | null;
  readonly anchors: readonly AnchorRequest[];
  /** Bars a phrase, where the teacher says it. */
  readonly unit: number | null;
}
