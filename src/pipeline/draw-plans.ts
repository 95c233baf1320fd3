import { applyEdits } from '../../shared/bowing/apply-edit.ts';
import { bestPlan } from '../../shared/bowing/best-plan.ts';
import type { Plan } from '../../shared/bowing/bowing.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';
import type { Score } from '../engrave/score.ts';
import { planKey } from '../pages/built-tune.ts';
import { readEdited } from './read-edited.ts';

/**
 * Drawings of the tune with the slurs of the best plan to reach each of its anchors, for every level and
 * preset that a plan block asks for, by `planKey`. A plan that changes nothing has no drawing of its own.
 * `draw` throws where a tune cannot be drawn.
 */
export function drawPlans(
  study: Study,
  request: StudyRequest,
  draw: (study: Study) => Score,
): ReadonlyMap<string, Score> {
  const planned = new Map<string, Score>();
  for (const anchor of study.bowing.anchors) {
    for (const { leadIns } of [anchor, ...anchor.asked]) {
      const plan = bestPlan(leadIns)?.plan;
      if (plan === undefined || plan.changes.length === 0 || planned.has(planKey(plan))) continue;
      planned.set(planKey(plan), draw(studyPlan(study, request, plan)));
    }
  }
  return planned;
}

/**
 * Studies the tune with a plan's slurs written into its ABC, which is then parsed again: the result is
 * what a teacher gets who adopts the plan. Throws where the new ABC does not parse to the same notes
 * with those slurs.
 */
export function studyPlan(study: Study, request: StudyRequest, plan: Plan): Study {
  const { tune } = study;
  const read = readEdited(tune, applyEdits(tune, plan.changes));
  if (!read) throw new Error(`${tune.title} does not read again with the slurs of a plan`);
  return studyTune(read, request);
}
