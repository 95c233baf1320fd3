import { at } from '../must.ts';
import type { BowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { type LaidStrokes, strokeAt } from './lay-strokes.ts';
import { partRuns } from './part-runs.ts';

/**
 * What is wrong with the strokes of a tune, as keys that can be compared before and after an edit: conflicting
 * signs, missed anchors, parts whose second pass is reversed. A key contains the sounded note, so that each
 * pass counts separately.
 */
export interface Troubles {
  /** Keys of conflicting signs and missed anchors. */
  readonly faults: ReadonlySet<string>;
  /** Keys of parts whose second pass is reversed. */
  readonly reversals: ReadonlySet<string>;
}

/** Key of a conflicting sign, by sounded note. */
export const signFault = (note: number): string => `sign ${note}`;
/** Key of a missed anchor, by sounded note. */
export const anchorFault = (note: number): string => `anchor ${note}`;
/** Key of a part whose second pass is reversed. */
export const reversal = (part: number): string => `part ${part}`;

/** Finds what is wrong with the strokes of a tune. */
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
