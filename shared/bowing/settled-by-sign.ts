import { at } from '../must.ts';
import type { Direction } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { strokeDirection } from './lead-in-model.ts';

/** A sign that contradicts the stroke of an anchor. */
export interface AgainstSign {
  /** Index of the sounded note with the sign. */
  readonly sign: number;
  /** Number of strokes from the anchor (included) to the sign (not included); 0 where it is on the anchor. */
  readonly strokes: number;
}

/**
 * Finds the sign that contradicts an anchor: the one on it, or the next after it where both alternation up to
 * the anchor and counting back from that sign give the other stroke. null where there is none, or where the bow
 * may lift at the sign, since a rest or a breath comes before it.
 *
 * `DEFG ABc2|d2e2 f2g2|vf4 e4|]`, with an anchor on A2: four strokes before the sign is a down-bow, and
 * alternation gives one too. An anchor with `start=up` is contradicted.
 */
export function settledOtherwise(
  { performance, marks, gaps }: BowingInput,
  groups: readonly (readonly number[])[],
  anchored: { readonly group: number; readonly direction: Direction; readonly counted: Direction },
): AgainstSign | null {
  const { group, direction, counted } = anchored;
  for (let g = group; g < groups.length; g++) {
    const sign = at(at(groups, g), 0);
    const mark = marks[at(performance.notes, sign).event];
    if (!mark) continue;
    const strokes = g - group;
    if (strokes === 0) return mark === direction ? null : { sign, strokes };
    const otherwise = counted !== direction && strokeDirection(mark, strokes) !== direction;
    return otherwise && !gaps[sign] ? { sign, strokes } : null;
  }
  return null;
}
