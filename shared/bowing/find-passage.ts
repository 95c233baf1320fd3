import { barRangeText } from '../music/bar-range.ts';
import { nearestBar } from '../music/nearest-bar.ts';
import { resolvePassage } from '../music/resolve-passage.ts';
import type { Tune } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { AnchorRequest } from './bowing.ts';
import type { SetPassage } from './find-lead-ins.ts';

/** An anchor block, and its passage; null where that is not in the tune or has no stroke. */
export interface FoundPassage {
  readonly request: AnchorRequest;
  readonly passage: SetPassage | null;
  readonly problems: readonly Problem[];
}

/**
 * Finds the passage of an anchor, and the stroke that it must start on: its `start`, else the sign on its
 * first note.
 */
export function findPassage(tune: Tune, request: AnchorRequest): FoundPassage {
  const bars = barRangeText(request.bars);
  const range = resolvePassage(tune, request.bars);
  const facts = { anchor: request.id, bars };
  if ('unknown' in range) {
    const { file, line } = tune.source;
    const place = request.place ?? { file, line, column: 1 };
    const { unknown: actual, known: expected } = range;
    const rest = { facts, actual, expected, nearest: nearestBar(actual, expected) };
    return {
      request,
      passage: null,
      problems: [problem('anchor-not-in-tune', place, rest)],
    };
  }
  const opening = tune.events[range.first];
  const mark = opening?.kind === 'note' ? opening.mark : null;
  const place = opening?.place ?? null;
  const direction = request.start ?? mark;
  if (!direction) {
    const missing = problem('anchor-without-stroke', request.place ?? place, {
      facts,
      expected: ['down', 'up'],
    });
    return { request, passage: null, problems: [missing] };
  }
  return { request, passage: { id: request.id, ...range, direction }, problems: [] };
}
