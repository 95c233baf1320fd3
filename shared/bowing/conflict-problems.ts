import type { Tune } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { Conflict, LaidStrokes } from './lay-strokes.ts';
import { turned } from './lead-in-model.ts';
import { mendFacts, noMends, type OfferedMends } from './offered-mends.ts';

/** Makes one warning for each sign in conflict, with all its passes. `mends`: by the event of the sign. */
export function conflictProblems(
  tune: Tune,
  plan: LaidStrokes,
  mends: ReadonlyMap<number, OfferedMends>,
): Problem[] {
  const byEvent = new Map<number, Conflict[]>();
  for (const c of plan.conflicts) byEvent.set(c.event, [...(byEvent.get(c.event) ?? []), c]);
  return [...byEvent]
    .sort(([a], [b]) => a - b)
    .flatMap(([event, found]) => {
      const note = tune.events[event];
      const first = found[0];
      if (note?.kind !== 'note' || !first) return [];
      const facts = {
        note: note.id,
        passes: found.map(c => c.pass).join(', '),
        since: first.since,
        counted: first.counted,
        ...mendFacts(tune, mends.get(event) ?? noMends),
      };
      return [
        problem('stroke-conflict', note.place, {
          facts,
          actual: turned(first.counted),
          expected: [first.counted],
        }),
      ];
    });
}
