import type { AnchorRequest, BowingStudy, Direction } from './bowing/bowing.ts';
import type { BowingSettings } from './bowing/settings.ts';
import { studyBowing } from './bowing/study-bowing.ts';
import { assignFingers } from './fingering/assign-fingers.ts';
import type { Fingering, Tuning } from './fingering/fingering.ts';
import type { Performance } from './music/performance.ts';
import { playedOrder } from './music/played-order.ts';
import type { Tune } from './music/tune.ts';
import { type Problem, problem } from './problem.ts';
import { mapSections } from './sections/map-sections.ts';
import type { LabelRequest } from './sections/phrase-labels.ts';
import type { SectionMap } from './sections/section-map.ts';

/** Everything that Bowbook works out about one tune. */
export interface Study {
  readonly tune: Tune;
  readonly tuning: Tuning;
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
  /** The phrases' labels, where the teacher gives them. */
  readonly labels?: LabelRequest | null;
}

/** Studies one tune: fingers, then the map, then the bowing, each on what came before. */
export function studyTune(tune: Tune, request: StudyRequest): Study {
  const performance = playedOrder(tune);
  const fingers = assignFingers(tune, request.tuning);
  const map = mapSections(tune, request.unit, request.labels?.labels ?? null);
  const bowing = studyBowing(tune, performance, fingers.fingering, map, request);
  return {
    tune,
    tuning: request.tuning,
    performance,
    fingering: fingers.fingering,
    map,
    bowing: bowing.study,
    problems: [...fingers.problems, ...wrongCount(map, request), ...bowing.problems],
  };
}

/** Labels that are not one a phrase are passed over, and it is said. */
function wrongCount({ phrases }: SectionMap, { labels }: StudyRequest): readonly Problem[] {
  if (!labels || labels.labels.length === phrases.length) return [];
  const facts = {
    given: labels.labels.length,
    phrases: phrases.length,
    bars: phrases.map(p => p.name).join(', '),
  };
  const actual = labels.labels.join(' ');
  const expected = [phrases.map(p => p.label).join(' ')];
  return [problem('labels-count', labels.place, { facts, actual, expected })];
}
