import { at } from '../must.ts';
import type { Direction, Stroke, StrokePlan } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { firstStroke } from './first-stroke.ts';
import { turned } from './lead-in-model.ts';
import { type AgainstSign, settledOtherwise } from './settled-by-sign.ts';

/** A stroke sign, in one pass, that contradicts the alternation of strokes. */
export interface Conflict {
  readonly event: number;
  /** Index of the sounded note. */
  readonly note: number;
  readonly pass: number;
  /** Number of strokes from the last fixed one (included) to the sign (not included). */
  readonly since: number;
  /** Stroke that alternation gives. */
  readonly counted: Direction;
}

/** The strokes of a tune, with conflicting signs and arrivals at anchors. */
export interface LaidStrokes extends StrokePlan {
  readonly conflicts: readonly Conflict[];
  /** How each anchor is reached, in playing order. */
  readonly reached: readonly Reached[];
}

/** The stroke on which the first note of an anchor is reached; `note` is its index among sounded notes. */
export interface Reached {
  readonly note: number;
  readonly direction: Direction;
  /** The sign that contradicts the anchor, whose stroke then does not count; null where there is none. */
  readonly against: AgainstSign | null;
}

/**
 * Computes the strokes of a tune as played: one for each note or slur, down and up in alternation. Tied
 * notes share a stroke, and so do the notes of a chord; rests and grace notes have none.
 *
 * `(FE)|:D2 FA|` starting up: FE up, D down, F up, A down. Signs (`u`, `v`) override alternation. Where one
 * disagrees with it, the bow lifts and starts again in the same direction (a retake). That is taken as
 * intended where the stroke before is stated too, or a rest or a breath comes between; otherwise it is a
 * conflict. An anchor states its first stroke as a sign does, except where a sign contradicts it
 * (`settled-by-sign.ts`): then the sign counts.
 */
export function layScore(score: BowingInput): LaidStrokes {
  const { notes } = score.performance;
  const strokes: Stroke[] = [];
  const strokeOf: number[] = [];
  const conflicts: Conflict[] = [];
  const reached: Reached[] = [];

  score.restarts.forEach((from, stretch) => {
    const end = score.restarts[stretch + 1] ?? notes.length;
    const groups = strokeGroups(score, from, end);
    let direction = firstStroke(score, groups, stretch === 0);
    let since = 0;
    let before: Stroke | undefined;
    for (const [g, group] of groups.entries()) {
      const head = at(group, 0);
      const { event, pass } = at(notes, head);
      const counted = before ? turned(direction) : direction;
      const mark = score.marks[event] ?? null;
      const anchored = score.anchored.get(event);
      const meant = before?.stated != null || score.gaps[head] === true;
      let against: AgainstSign | null = null;
      if (anchored !== undefined) {
        against = settledOtherwise(score, groups, { group: g, direction: anchored, counted });
        const signed = mark !== null && (meant || against !== null);
        reached.push({ note: head, direction: signed ? mark : counted, against });
      } else if (mark !== null && mark !== counted && before && !meant) {
        conflicts.push({ event, note: head, pass, since, counted });
      }
      const stated = (against ? undefined : anchored) ?? mark;
      direction = stated ?? counted;
      since = stated === null ? since + 1 : 1;
      const retake = strokes[strokes.length - 1]?.direction === direction;
      for (const note of group) strokeOf[note] = strokes.length;
      before = { direction, pass, notes: group, stated, retake };
      strokes.push(before);
    }
  });
  return { strokes, strokeOf, conflicts, reached };
}

/** Returns the stroke of a sounded note. */
export const strokeAt = (plan: StrokePlan, note: number): Stroke =>
  at(plan.strokes, at(plan.strokeOf, note));

/** Groups the sounded notes from `from` to `end` (not included) by stroke; an anchor always begins one. */
export function strokeGroups(score: BowingInput, from: number, end: number): number[][] {
  const { joined, follows, anchored, performance } = score;
  const groups: number[][] = [];
  let group: number[] | undefined;
  for (let k = from; k < end; k++) {
    const { event } = at(performance.notes, k);
    if (group && joined[event] && follows[k] && !anchored.has(event)) group.push(k);
    else {
      group = [k];
      groups.push(group);
    }
  }
  return groups;
}
