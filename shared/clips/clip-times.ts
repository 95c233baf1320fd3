import { pacesOf } from '../bowing/paces.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import { toNumber } from '../music/fraction.ts';
import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { paceOf } from './check-cues.ts';
import type { ClipCue } from './clip-cue.ts';
import { forwardCues, type PlacedCue, placeCues } from './place-cues.ts';

/** How a recording says where it is in the tune: by cues, or by a start and beats a minute. */
export interface ClipTiming {
  readonly cues: readonly ClipCue[];
  readonly steady: { readonly start: number; readonly tempo: number } | null;
}

/**
 * Seconds of a recording at which each bar of the tune as played begins, and, last, at which the
 * tune is over. Between two cues time runs evenly, as it does before the first and after the last,
 * at the pace of the stretch beside; null where the recording says too little to tell (fewer than
 * two good cues and no steady tempo).
 */
export function clipTimes(
  tune: Tune,
  performance: Performance,
  clip: ClipTiming,
  settings: Pick<BowingSettings, 'tempi'>,
): readonly number[] | null {
  const onsets = [...performance.bars.map(b => toNumber(b.onset)), toNumber(performance.length)];
  if (clip.steady !== null) {
    const { start, tempo } = clip.steady;
    const { beat } = pacesOf(tune, settings);
    return onsets.map(onset => start + (onset / toNumber(beat)) * (60 / tempo));
  }
  const { forward: cues } = forwardCues(placeCues(tune, performance, clip.cues).placed);
  const pace = paceOf(cues);
  return pace === null ? null : onsets.map(onset => secondsAt(onset, cues));
}

function secondsAt(onset: number, cues: readonly PlacedCue[]): number {
  const after = cues.findIndex(c => c.onset > onset);
  const right = after < 0 ? cues.length - 1 : Math.max(1, after);
  const [from, to] = [cues[right - 1], cues[right]];
  if (!from || !to) return 0;
  const pace = (to.cue.seconds - from.cue.seconds) / (to.onset - from.onset);
  return from.cue.seconds + (onset - from.onset) * pace;
}
