import type { Anchor } from '../bowing/bowing.ts';
import { leadInModel } from '../bowing/lead-in-of.ts';
import { alikeSpans } from '../bowing/plan-bowings.ts';
import { writtenSlurs } from '../bowing/written-slurs.ts';
import { at } from '../must.ts';
import type { Study, StudyRequest } from '../study.ts';
import { aimOf, contextOf, stretchOf } from './stretch-of.ts';

/**
 * For each junction (an event index), the junctions at the same place of identical phrases, itself
 * included. Phrases count as the planner counts them: those wholly inside a lead-in, with no slur
 * written over their edges.
 */
export function alikeJunctions(
  study: Study,
  request: StudyRequest,
  anchor: Anchor,
  junctions: readonly number[],
): ReadonlyMap<number, readonly number[]> {
  const context = contextOf(study, request);
  const { joined } = writtenSlurs(study.tune);
  const ties = new Map(junctions.map(e => [e, new Set([e])] as const));
  for (const leadIn of anchor.leadIns) {
    const stretch = stretchOf(study.performance, leadIn);
    const aim = aimOf(study.tune, request, anchor, leadIn);
    const form = leadInModel(context, stretch.from, stretch.end, joined, aim);
    for (const spans of alikeSpans(context, stretch, form)) {
      const [from, end] = at(spans, 0);
      for (let i = 1; i < end - from; i++) {
        const places = spans.map(([start]) => at(leadIn.notes, start + i));
        for (const e of places) for (const other of places) ties.get(e)?.add(other);
      }
    }
  }
  return new Map([...ties].map(([e, places]) => [e, [...places]]));
}
