import { at } from '../must.ts';
import type { Direction, RepeatStudy } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { type LaidStrokes, strokeAt } from './lay-strokes.ts';
import type { BowingContext } from './lead-in-of.ts';
import { mendRegion } from './mend-region.ts';
import { findMends, type MendSearch } from './mends.ts';
import { type OfferedMends, offeredMends, type Proof } from './offered-mends.ts';
import { type PartRun, partRuns } from './part-runs.ts';
import { reversal } from './troubles.ts';

/**
 * Studies the repeats of each part: its strokes in each pass, whether the second pass starts on the same stroke
 * as the first (at the first full bar), and the smallest mends.
 */
export function studyRepeats(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  proof: Proof,
): RepeatStudy[] {
  const startOf = (run: PartRun): Direction => strokeAt(laid, run.firstFull).direction;
  return [...partRuns(score.runs)].map(([part, runs]) => {
    const [first, second] = runs.map(startOf);
    const secondPass = second === undefined ? null : second === first ? 'same' : 'reversed';
    const run = at(runs, 0);
    const search = (): MendSearch => ({
      score,
      laid,
      passages,
      regions: [mendRegion(context, score, laid, run.from, run.end)],
      targets: [reversal(part)],
      keepRepeats: true,
    });
    const { mends } = secondPass === 'reversed' ? smallest(search(), proof) : { mends: [] };
    return { part, strokes: runs.map(r => strokesBegun(laid, r)), secondPass, mends };
  });
}

/** The smallest mends. Edits are tried in order of size, so the search stops after a few. */
function smallest(search: MendSearch, proof: Proof): OfferedMends {
  return offeredMends(search, findMends({ ...search, most: 8 }), proof);
}

/** Counts the strokes that begin in the pass; one that is slurred into it belongs to what comes before. */
function strokesBegun(laid: LaidStrokes, run: PartRun): number {
  const from = at(laid.strokeOf, run.from);
  const begun = strokeAt(laid, run.from).notes[0] === run.from ? 1 : 0;
  return at(laid.strokeOf, run.end - 1) - from + begun;
}
