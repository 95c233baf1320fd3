import { at } from '../must.ts';
import type { Direction, Stroke, StrokePlan } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { firstStroke } from './first-stroke.ts';
import { turned } from './lead-in-model.ts';
import { type AgainstSign, settledOtherwise } from './settled-by-sign.ts';

/** A sign that the count does not reach, in one pass. */
export interface Conflict {
  readonly event: number;
  /** Index of the sounded note. */
  readonly note: number;
  readonly pass: number;
  /** Strokes from the last settled one (counted) to the sign (not counted). */
  readonly since: number;
  /** The stroke that the count gives. */
  readonly counted: Direction;
}

/** Strokes as laid, with the signs that the count does not reach and the arrivals at anchors. */
export interface LaidStrokes extends StrokePlan {
  readonly conflicts: readonly Conflict[];
  /** How the bow came to each anchored note, in played order. */
  readonly reached: readonly Reached[];
}

/** How the bow came to an anchored note, by its index among the sounded ones. */
export interface Reached {
  readonly note: number;
  readonly direction: Direction;
  /** The sign that settles its stroke otherwise than the anchor, which then states nothing. */
  readonly against: AgainstSign | null;
}

/**
 * Lays the bow over a tune as played: one stroke a note, one a slur, each the other way from the
 * one before. A tie keeps its stroke; a chord is one; rests and grace notes take none.
 *
 * `(FE)|:D2 FA|` starting up: FE up, D down, F up, A down. Signs (`u`, `v`) win over the count.
 * Where one disagrees, the bow lifts and starts again in the same direction (a retake); that is
 * taken as meant when the stroke before is stated too, or a rest or a breath stands between.
 * Otherwise it is a conflict, and reported. An anchor states its first stroke as a sign does, but where
 * a sign settles that otherwise (`settled-by-sign.ts`) the sign is followed, and the two contradict.
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

/** The stroke that holds a sounded note. */
export const strokeAt = (plan: StrokePlan, note: number): Stroke =>
  at(plan.strokes, at(plan.strokeOf, note));

/** Sounded notes from..end gathered into strokes; an anchor always begins one. */
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
