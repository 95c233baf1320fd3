import { applyEdits } from '../../shared/bowing/apply-edit.ts';
import { bestPlan } from '../../shared/bowing/best-plan.ts';
import type { Plan } from '../../shared/bowing/bowing.ts';
import { slurAbc } from '../../shared/notation/slur-abc.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import type { Score } from '../engrave/score.ts';
import { planKey } from '../pages/built-tune.ts';

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
  const planned = applyEdits(tune, plan.changes);
  const text = slurAbc(tune, planned);
  const read = parseTunes({ ...tune.source, text }, { id: tune.id }).tunes[0];
  const alike = read?.events.every((event, e) => {
    const wanted = planned.events[e];
    if (event.kind !== 'note' || wanted?.kind !== 'note') return event.kind === wanted?.kind;
    return (
      event.id === wanted.id &&
      event.slursOpened === wanted.slursOpened &&
      event.slursClosed === wanted.slursClosed
    );
  });
  if (!read || !alike || read.events.length !== planned.events.length) {
    throw new Error(`${tune.title} does not read again with the slurs of a plan:\n${text}`);
  }
  return studyTune({ ...read, type: tune.type }, request);
}
