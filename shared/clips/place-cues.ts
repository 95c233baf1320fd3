import { toNumber } from '../music/fraction.ts';
import { nearestBar } from '../music/nearest-bar.ts';
import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { type Problem, problem } from '../problem.ts';
import type { ClipCue } from './clip-cue.ts';

/** A cue at its bar of the tune as played. */
export interface PlacedCue {
  readonly cue: ClipCue;
  /** Index in `performance.bars`. */
  readonly played: number;
  /** Where that bar begins, in whole notes from the start of the tune. */
  readonly onset: number;
}

/**
 * Finds each cue's bar in the tune as played, and puts them in played order.
 *
 * `A8/2` is the written bar of that name where there is one, the first time it is played; else the
 * second time that a bar `A8` is played, whatever ending it stands in. So `A1/2` is the repeat of
 * `A1`, and in a tune gone through twice with two endings `A8/3` is the first ending again.
 */
export function placeCues(
  tune: Tune,
  performance: Performance,
  cues: readonly ClipCue[],
): { readonly placed: readonly PlacedCue[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const placed = cues.flatMap(cue => {
    const times = timesPlayed(tune, performance, cue.bar);
    const played = times.length === 0 ? undefined : times.at(isExact(tune, cue) ? 0 : cue.pass - 1);
    if (played === undefined) {
      problems.push(times.length === 0 ? unknownBar(tune, cue) : unknownPass(cue, times.length));
      return [];
    }
    return [{ cue, played, onset: toNumber(at(performance.bars, played).onset) }];
  });
  return { placed: placed.toSorted((a, b) => a.played - b.played), problems };
}

/** A cue that does not go forward from the last good one: in the tune, or in time. */
export interface LaggingCue {
  readonly lagging: PlacedCue;
  readonly after: PlacedCue;
}

/** Cues, in played order, that go forward in the recording too, and those that do not. */
export function forwardCues(placed: readonly PlacedCue[]): {
  readonly forward: readonly PlacedCue[];
  readonly lagging: readonly LaggingCue[];
} {
  const forward: PlacedCue[] = [];
  const lagging: LaggingCue[] = [];
  for (const next of placed) {
    const last = forward.at(-1);
    const goesOn = !last || (next.played > last.played && next.cue.seconds > last.cue.seconds);
    if (goesOn) forward.push(next);
    else lagging.push({ lagging: next, after: last });
  }
  return { forward, lagging };
}

const isExact = (tune: Tune, { bar }: ClipCue): boolean =>
  bar.includes('/') && tune.bars.some(b => b.name === bar);

/** Indices in `performance.bars` at which a bar of this name is played, endings taken together. */
function timesPlayed(tune: Tune, { bars }: Performance, name: string): readonly number[] {
  const exact = tune.bars.some(b => b.name === name);
  const wanted = exact ? name : plainName(name);
  return bars.flatMap(({ bar }, i) => {
    const found = at(tune.bars, bar).name;
    return (exact ? found : plainName(found)) === wanted ? [i] : [];
  });
}

/** `A8/2` without its ending: `A8`. */
export const plainName = (name: string): string => name.replace(/\/.*/, '');

function unknownBar(tune: Tune, { bar, place }: ClipCue): Problem {
  const known = tune.bars.map(b => b.name);
  const near = nearestBar(bar, known);
  return problem('cue-bar', place, { actual: bar, expected: known, nearest: near });
}

const unknownPass = ({ bar, pass, place }: ClipCue, times: number): Problem =>
  problem('cue-pass', place, {
    facts: { bar: plainName(bar), pass },
    actual: bar,
    expected: [`${times}`],
  });
