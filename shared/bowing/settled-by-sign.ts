import { at } from '../must.ts';
import type { Direction } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { strokeDirection } from './lead-in-model.ts';

/** A sign that says another stroke at an anchor than the anchor does. */
export interface AgainstSign {
  /** Index of the sounded note with the sign. */
  readonly sign: number;
  /** Strokes from the anchor (counted) to the sign (not counted); 0 where it stands on the anchor. */
  readonly strokes: number;
}

/**
 * Finds the sign that settles the stroke of an anchored group otherwise than its anchor: the one on
 * it, or the next one after it where both the count that reaches the anchor and the count back from
 * that sign give the other stroke. null where there is none, or where the bow may lift at the sign,
 * since a rest or a breath stands before it.
 *
 * `DEFG ABc2|d2e2 f2g2|vf4 e4|]`, with an anchor on A2: four strokes back from the sign is a
 * down-bow, which is also what the count reaches. An anchor that says up is settled otherwise.
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
