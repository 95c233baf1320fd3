/**
 * String and finger of every written note, by the cheapest path through the tune.
 *
 * Most pitches of first position have one place, some have two: E above the A string is the open E
 * string or the fourth finger on the A string. Which is better depends on the notes around it, so
 * each note (or chord) lists the ways it can be held, each way has a cost of its own, going from
 * one to the next costs what the bow has to cross, and the path with the least sum wins. Costs:
 *
 *   open string 0 · fingers 1 to 3, 1 · fourth finger 6 · each string crossed 4
 *
 * and a pitch that an open string has costs 6 under any finger: on a fiddle that is always the
 * fourth, on one tuned AEAE it may be the third.
 *
 * Notes on a fiddle, D5 E5 D5: with the open E 1 + (4 + 0) + (4 + 1) = 10; with the fourth
 * finger 1 + 6 + 1 = 8, so the fourth finger saves leaving the string for one note. D5 E5 F#5:
 * open 1 + (4 + 0) + 1 = 6, fourth finger 1 + 6 + (4 + 1) = 12: one must cross anyway, so open.
 * D5 E5 E5 D5: open 10, fourth finger 14: two notes are worth the journey. That the fourth finger is
 * for the first of these and not for the second is common practice; the figures are ours.
 *
 * Written fingers `!0!` to `!4!` leave only the ways that use them. A tied note stays where it is: a
 * tie that changed its string would be no tie, so such a way is taken only where there is no other.
 * Equal sums are settled for the higher string, so the answer is the same every time.
 */
import { type Pitch, pitchName } from '../music/pitch.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Problem } from '../problem.ts';
import type { Fingering, Stop, Tuning } from './fingering.ts';
import { outOfReach } from './out-of-reach.ts';
import type { Hold } from './stops-of.ts';
import { singleHolds, type Ways, waysOf } from './ways-to-hold.ts';

const crossingCost = 4;

/** More than leaving the string of a tied note could save. */
const brokenTieCost = 1000;

/**
 * Chooses string and finger for every note of a tune, in time proportional to its notes. Problems,
 * all warnings: `out-of-reach`, `chord-strings`, `finger-mark`. A pitch that has no stop is null.
 */
export function assignFingers(
  tune: Tune,
  tuning: Tuning,
): { readonly fingering: Fingering; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const steps: Step[] = [];
  const lost = new Map<string, { readonly pitch: Pitch; readonly notes: NoteEvent[] }>();
  const holdsOfOne = singleHolds(tuning);
  tune.events.forEach((e, event) => {
    if (e.kind === 'rest') return;
    const played = e.pitches.filter(p => holdsOfOne(p).length > 0);
    for (const p of e.pitches) {
      if (played.includes(p)) continue;
      const name = pitchName(p);
      const known = lost.get(name) ?? { pitch: p, notes: [] };
      known.notes.push(e);
      lost.set(name, known);
    }
    const [one] = played;
    if (!one) return;
    const found =
      played.length === 1 && e.fingers.length === 0
        ? { pitches: played, holds: holdsOfOne(one) }
        : waysOf(e, played, tuning, problems);
    steps.push({ event, tied: e.tied, ...found });
  });
  for (const { pitch, notes } of lost.values()) problems.push(outOfReach(pitch, notes, tuning));
  const path = cheapestPath(steps);
  const chosen = new Map(steps.map((step, t) => [step.event, { step, hold: at(path, t) }]));
  const fingering = tune.events.map((e, event) => {
    if (e.kind === 'rest') return [];
    const found = chosen.get(event);
    return found ? stopsAt(e, found.step, found.hold) : e.pitches.map(() => null);
  });
  return { fingering, problems };
}

/** A note or chord of the tune with the ways to hold it. */
interface Step extends Ways {
  readonly event: number;
  /** Tied on to the next step. */
  readonly tied: boolean;
}

/**
 * The hold chosen for each step: the way with the least sum, of equals the one that comes first.
 *
 * `sums[i]` is the least sum of all ways that end with hold i of the step reached so far, and
 * `cameFrom[t][i]` the hold of step t - 1 that such a way comes from. At the end the least sum is
 * followed back. (Viterbi's algorithm.)
 */
function cheapestPath(steps: readonly Step[]): readonly Hold[] {
  const cameFrom: number[][] = [];
  let sums: readonly number[] = [];
  steps.forEach((step, t) => {
    const before = t > 0 ? at(steps, t - 1) : null;
    const own: number[] = [];
    const next = step.holds.map(hold => {
      if (!before) return hold.cost;
      let [best, least] = [-1, Number.POSITIVE_INFINITY];
      for (let i = 0; i < before.holds.length; i++) {
        const sum = at(sums, i) + moveCost(at(before.holds, i), hold, before.tied);
        if (sum < least) [best, least] = [i, sum];
      }
      own.push(best);
      return least + hold.cost;
    });
    cameFrom.push(own);
    sums = next;
  });
  const chosen: Hold[] = [];
  let best = sums.indexOf(Math.min(...sums));
  for (let t = steps.length - 1; t >= 0; t--) {
    chosen.push(at(at(steps, t).holds, best));
    if (t > 0) best = at(at(cameFrom, t), best);
  }
  return chosen.reverse();
}

/** What the bow crosses from one hold to the next, and the price of a tie that changes its string. */
function moveCost(last: Hold, next: Hold, tied: boolean): number {
  const crossed = Math.max(0, next.top - last.bottom, last.top - next.bottom);
  return crossed * crossingCost + (tied && crossed > 0 ? brokenTieCost : 0);
}

/** The stops of a note's pitches in their order, null for those that are not played. */
function stopsAt(e: NoteEvent, { pitches }: Step, hold: Hold): readonly (Stop | null)[] {
  if (pitches.length === e.pitches.length) return hold.stops;
  return e.pitches.map(p => {
    const i = pitches.indexOf(p);
    return i < 0 ? null : at(hold.stops, i);
  });
}
