import { bowingInput, type LayRequest } from '../../shared/bowing/bowing-input.ts';
import { conflictProblems } from '../../shared/bowing/conflict-problems.ts';
import { type LaidStrokes, layScore } from '../../shared/bowing/lay-strokes.ts';
import type { Performance } from '../../shared/music/performance.ts';
import type { Tune } from '../../shared/music/tune.ts';
import type { Problem } from '../../shared/problem.ts';

/** Strokes of a tune as played, with a warning for each sign that the count does not reach. */
export function layStrokes(
  tune: Tune,
  performance: Performance,
  request: LayRequest = {},
): { plan: LaidStrokes; problems: readonly Problem[] } {
  const plan = layScore(bowingInput(tune, performance, request));
  return { plan, problems: conflictProblems(tune, plan, new Map()) };
}
