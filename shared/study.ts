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

/** Everything that Bowbook computes for one tune. */
export interface Study {
  readonly tune: Tune;
  readonly tuning: Tuning;
  readonly performance: Performance;
  readonly fingering: Fingering;
  readonly map: SectionMap;
  readonly bowing: BowingStudy;
  readonly problems: readonly Problem[];
}

/** What a study depends on besides the tune. */
export interface StudyRequest {
  readonly tuning: Tuning;
  readonly bowing: BowingSettings;
  /** `start=`: the first stroke; null to compute it. */
  readonly start: Direction | null;
  readonly anchors: readonly AnchorRequest[];
  /** Bars per phrase; null to compute it. */
  readonly unit: number | null;
  /** The teacher's labels of the phrases; null to compute them. */
  readonly labels?: LabelRequest | null;
}

/**
 * Studies one tune: fingers, section map and bowing, each from the results before it. Never throws for
 * a book's defects. `readAgain` writes an edited tune as ABC and reads that (null where it does not read
 * as edited): each mend that is offered is proved on it. Where there is no reader, it is the tune edited.
 */
export function studyTune(
  tune: Tune,
  request: StudyRequest,
  readAgain: (tune: Tune, edited: Tune) => Tune | null = (_, edited) => edited,
): Study {
  const performance = playedOrder(tune);
  const fingers = assignFingers(tune, request.tuning);
  const map = mapSections(tune, request.unit, request.labels?.labels ?? null);
  const bowing = studyBowing(tune, performance, fingers.fingering, map, request, readAgain);
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

/** A warning where there is not one label per phrase: the labels are ignored then. */
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
