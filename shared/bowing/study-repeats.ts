import type { BowScore } from './bow-score.ts';
import type { RepeatStudy } from './bowing.ts';
import type { SetPassage } from './find-lead-ins.ts';
import type { LaidStrokes } from './lay-strokes.ts';
import { turned } from './lead-in-form.ts';
import type { BowingContext } from './lead-in-of.ts';
import { mendRegion } from './mend-region.ts';
import { findMends } from './mends.ts';
import { type PartRun, partRuns } from './part-runs.ts';
import { reversal } from './troubles.ts';

/** Mends shown for a part whose second time through is reversed. */
const mostMends = 6;

/**
 * For each part: its strokes each time through, whether the second time starts on the same stroke
 * as the first (at the first full bar), whether what follows does, and the smallest mends.
 */
export function studyRepeats(
  context: BowingContext,
  score: BowScore,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
): RepeatStudy[] {
  const startOf = (run: PartRun) => laid.strokes[laid.strokeOf[run.firstFull] ?? -1]?.direction;
  return [...partRuns(score.runs)].map(([part, runs]) => {
    const starts = runs.flatMap(run => startOf(run) ?? []);
    const [first, second] = starts;
    const secondPass = second === undefined ? null : second === first ? 'same' : 'reversed';
    const run = runs[0];
    return {
      part,
      strokes: runs.map(r => strokesBegun(laid, r)),
      secondPass,
      starts,
      next: goesOn(score.runs, laid, part, startOf),
      mends:
        secondPass === 'reversed' && run
          ? findMends({
              score,
              laid,
              passages,
              regions: [mendRegion(context, score, laid, run.from, run.end)],
              targets: [reversal(part)],
              most: mostMends,
              keepRepeats: true,
            })
          : [],
    };
  });
}

const strokesBegun = (laid: LaidStrokes, run: PartRun): number => {
  const from = laid.strokeOf[run.from] ?? 0;
  const last = laid.strokeOf[run.end - 1] ?? 0;
  const begun = laid.strokes[from]?.notes[0] === run.from ? 1 : 0;
  return last - from + begun;
};

/** Whether the part after the first time this one is done, or the tune begun again, starts alike. */
function goesOn(
  order: readonly PartRun[],
  laid: LaidStrokes,
  part: number,
  startOf: (run: PartRun) => string | undefined,
): 'same' | 'reversed' | null {
  const first = order.findIndex(r => r.part === part);
  const here = order[first];
  if (!here) return null;
  const next = order.slice(first).find(r => r.part !== part);
  if (next) return startOf(next) === startOf(here) ? 'same' : 'reversed';
  const [opening, last] = [laid.strokes[0], laid.strokes.at(-1)];
  if (!opening || !last) return null;
  return turned(last.direction) === opening.direction ? 'same' : 'reversed';
}
