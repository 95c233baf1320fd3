import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { ClipCue } from './clip-cue.ts';
import { forwardCues, type LaggingCue, type PlacedCue, placeCues } from './place-cues.ts';

/** How far a stretch between two cues may differ from the recording's own pace. */
const mostStray = 0.1;

/**
 * Holds a recording's cues to the map: bars and passes that the tune has not, two cues for one bar
 * or one moment, cues that run backwards, and cues that stray.
 *
 * A recording has a pace of its own, seconds a whole note: the middle one of the stretches between
 * neighbouring cues. A cue strays when its stretch is more than a tenth longer or shorter than that.
 * With A1=0:00 A3=0:04 A5=0:09 A7=0:12 B1=0:16 (a reel at one bar in two seconds) the stretch to A5
 * is five seconds for four: it strays, and A7 is then measured from A3, whence it is right. Where
 * the next cue goes on evenly from the one that strays, the player has paused or has slipped; that
 * is said once, and what follows is measured from there.
 */
export function checkCues(
  tune: Tune,
  performance: Performance,
  cues: readonly ClipCue[],
): readonly Problem[] {
  const { placed, problems } = placeCues(tune, performance, cues);
  const { forward, lagging } = forwardCues(placed);
  return [...problems, ...lagging.map(lagProblem), ...strays(forward)];
}

function lagProblem({ lagging: { cue, played }, after }: LaggingCue): Problem {
  const facts = { other: after.cue.bar, from: after.cue.seconds, seconds: cue.seconds };
  const overlaps = played === after.played || cue.seconds === after.cue.seconds;
  const rule = overlaps ? 'cue-overlap' : 'cue-backwards';
  return problem(rule, cue.place, { facts, actual: cue.bar });
}

function strays(cues: readonly PlacedCue[]): readonly Problem[] {
  const pace = paceOf(cues);
  if (pace === null || cues.length < 3) return [];
  const off = (from: PlacedCue, to: PlacedCue): number =>
    (to.cue.seconds - from.cue.seconds) / ((to.onset - from.onset) * pace) - 1;
  const isOff = (from: PlacedCue, to: PlacedCue): boolean =>
    Math.abs(off(from, to)) > mostStray + 1e-9;
  const problems: Problem[] = [];
  let [from] = cues;
  cues.slice(1).forEach((cue, i) => {
    if (!from) return;
    const next = cues[i + 2];
    if (isOff(from, cue)) {
      problems.push(
        strayed(cue, from.cue.seconds + (cue.onset - from.onset) * pace, off(from, cue)),
      );
      const goesOnFromHere = next && !isOff(cue, next) && isOff(from, next);
      if (!goesOnFromHere) return;
    }
    from = cue;
  });
  return problems;
}

/** Seconds a whole note: the middle one of the stretches between cues; null with fewer than two. */
export function paceOf(cues: readonly PlacedCue[]): number | null {
  const paces = cues
    .slice(1)
    .flatMap((to, i) => {
      const from = cues[i];
      const notes = from ? to.onset - from.onset : 0;
      return from && notes > 0 ? [(to.cue.seconds - from.cue.seconds) / notes] : [];
    })
    .sort((a, b) => a - b);
  const middle = Math.floor((paces.length - 1) / 2);
  const [low, high] = [paces[middle], paces[paces.length - 1 - middle]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}

function strayed({ cue }: PlacedCue, expected: number, off: number): Problem {
  const facts = {
    seconds: cue.seconds,
    expected: Math.round(expected * 10) / 10,
    percent: Math.round(Math.abs(off) * 100),
    way: off > 0 ? 'late' : 'early',
  } as const;
  return problem('cue-stray', cue.place, { facts, actual: cue.bar });
}
