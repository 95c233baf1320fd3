import type { Anchor, LeadIn } from '../bowing/bowing.ts';
import {
  type BowingContext,
  bowingContext,
  type LeadInAim,
  presetOf,
} from '../bowing/lead-in-of.ts';
import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import type { Study, StudyRequest } from '../study.ts';

/**
 * Sounded notes of a lead-in where it is first played, as indices: `from` included, `end` not. Throws
 * where the lead-in is not one of this performance.
 */
export function stretchOf(
  { notes }: Performance,
  leadIn: LeadIn,
): { readonly from: number; readonly end: number } {
  const length = leadIn.notes.length;
  const from = notes.findIndex((_, k) => leadIn.notes.every((e, i) => notes[k + i]?.event === e));
  if (from < 0) throw new Error('the lead-in is not played');
  return { from, end: from + length };
}

/** The limits and the goal that `studyBowing` plans a lead-in by. */
export function aimOf(
  tune: Tune,
  { anchors, bowing }: StudyRequest,
  anchor: Anchor,
  leadIn: LeadIn,
): LeadInAim {
  const asked = anchors.find(a => a.id === anchor.id);
  return {
    start: leadIn.start,
    arrive: anchor.direction,
    level: asked?.level ?? bowing.level,
    preset: presetOf(bowing, tune, asked?.preset ?? null),
  };
}

/** What the planner needs to know of a finished study. */
export const contextOf = (
  { tune, performance, fingering, map }: Study,
  { bowing }: StudyRequest,
): BowingContext => bowingContext(tune, performance, fingering, map, bowing);
