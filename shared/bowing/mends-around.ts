import type { BowingInput } from './bowing-input.ts';
import { cellStarts, type SetPassage, stretchBefore } from './find-lead-ins.ts';
import type { LaidStrokes } from './lay-strokes.ts';
import type { BowingContext } from './lead-in-of.ts';
import { mendRegion } from './mend-region.ts';
import { findMends, type MendRegion, type MendSearch } from './mends.ts';
import { noMends, type OfferedMends, offeredMends, type Proof } from './offered-mends.ts';
import { signFault } from './troubles.ts';

/** Sounded notes from `from` (included) to `end` (not included). */
export interface Span {
  readonly from: number;
  readonly end: number;
}

/**
 * Finds mends near the trouble; where there are none, in the notes between each note in trouble and the last
 * sign, anchor or restart before it, across repeat signs.
 */
export function mendsNearOrFar(
  near: MendSearch,
  notes: readonly number[],
  regionsOf: (spans: readonly Span[]) => MendRegion[],
  proof: Proof,
): OfferedMends {
  if (notes.length === 0) return noMends;
  const mends = offeredMends(near, findMends(near), proof);
  if (mends.mends.length > 0) return mends;
  const { score, laid, passages } = near;
  const far = notes.map(end => ({
    from: stretchBefore(score, laid, passages, new Set(), end).from,
    end,
  }));
  const search = { ...near, regions: regionsOf(far) };
  return offeredMends(search, findMends(search), proof);
}

/** Finds the mends of each conflicting sign. */
export function conflictMends(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  proof: Proof,
): Map<number, OfferedMends> {
  const mends = new Map<number, OfferedMends>();
  const cells = cellStarts(score);
  const regionsOf = (all: readonly Span[]) =>
    all.map(s => mendRegion(context, score, laid, s.from, s.end));
  for (const event of new Set(laid.conflicts.map(c => c.event))) {
    const notes = laid.conflicts.filter(c => c.event === event).map(c => c.note);
    const spans = notes.map(note => ({
      from: stretchBefore(score, laid, passages, cells, note).from,
      end: note,
    }));
    const targets = notes.map(signFault);
    const near = { score, laid, passages, regions: regionsOf(spans), targets };
    mends.set(event, mendsNearOrFar(near, notes, regionsOf, proof));
  }
  return mends;
}
