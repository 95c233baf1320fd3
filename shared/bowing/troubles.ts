import { at } from '../must.ts';
import type { BowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { type LaidStrokes, strokeAt } from './lay-strokes.ts';
import { partRuns } from './part-runs.ts';

/**
 * What is wrong with strokes as laid, as keys that can be compared before and after an edit:
 * signs that the count does not reach, anchors reached the wrong way, parts whose second time
 * through is reversed. A key names the sounded note, so each pass counts by itself.
 */
export interface Troubles {
  /** Signs and anchors. */
  readonly faults: ReadonlySet<string>;
  /** Parts that start reversed the second time. */
  readonly reversals: ReadonlySet<string>;
}

/** Key of a sign that is not reached, by sounded note. */
export const signFault = (note: number): string => `sign ${note}`;
/** Key of an anchor that is missed, by sounded note. */
export const anchorFault = (note: number): string => `anchor ${note}`;
/** Key of a part that begins on the other stroke the second time. */
export const reversal = (part: number): string => `part ${part}`;

/** Finds what is wrong with strokes as laid. */
export function troublesOf(
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
): Troubles {
  const wanted = new Map(passages.map(p => [p.first, p.direction]));
  const faults = new Set(laid.conflicts.map(c => signFault(c.note)));
  for (const { note, direction } of laid.reached) {
    const { event } = at(score.performance.notes, note);
    if (wanted.get(event) !== direction) faults.add(anchorFault(note));
  }
  const reversals = new Set<string>();
  for (const [part, runs] of partRuns(score.runs)) {
    const [first, second] = runs.map(run => strokeAt(laid, run.firstFull));
    if (first && second && first.direction !== second.direction) reversals.add(reversal(part));
  }
  return { faults, reversals };
}
