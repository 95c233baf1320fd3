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
 * Written fingers `!0!` to `!4!` leave only the ways that use them. A tied note stays where it is.
 * Equal sums are settled for the higher string, so the answer is the same every time.
 */
import { diatonic, type Pitch, pitchName } from '../music/pitch.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { Fingering, Stop, Tuning } from './fingering.ts';
import { outOfReach } from './out-of-reach.ts';
import { type Hold, holdsOf } from './stops-of.ts';

const crossingCost = 4;

/**
 * Fingers a tune. Rules that its problems name: `out-of-reach`, `chord-strings`, `finger-mark`, all
 * warnings; a pitch they leave without a stop is null.
 */
export function assignFingers(
  tune: Tune,
  tuning: Tuning,
): { readonly fingering: Fingering; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const steps: Step[] = [];
  const lost = new Map<string, { pitch: Pitch; notes: NoteEvent[] }>();
  const holdsOfOne = pitchHolds(tuning);
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
    const plain = played.length === 1 && e.fingers.length === 0;
    steps.push(
      plain
        ? { event, pitches: played, holds: holdsOfOne(one) }
        : stepOf(e, event, played, tuning, problems),
    );
  });
  for (const { pitch, notes } of lost.values()) problems.push(...outOfReach(pitch, notes, tuning));
  const path = cheapestPath(steps, tune);
  let t = 0;
  const fingering = tune.events.map((e, event) => {
    if (e.kind === 'rest') return [];
    const step = steps[t];
    return step?.event === event ? stopsAt(e, step, path[t++]) : e.pitches.map(() => null);
  });
  return { fingering, problems };
}

/** A note with the ways to hold it. `pitches` are those that have a stop. */
interface Step {
  readonly event: number;
  readonly pitches: readonly Pitch[];
  readonly holds: readonly Hold[];
}

/** The ways to hold a pitch alone, kept for each pitch in reach as long as the tuning is. */
function pitchHolds(tuning: Tuning): (p: Pitch) => readonly Hold[] {
  const known = holdsKept.get(tuning) ?? new Map<number, readonly Hold[]>();
  holdsKept.set(tuning, known);
  return p => {
    const key = diatonic(p) * 5 + p.alter;
    const found = known.get(key) ?? holdsOf([p], tuning, [], true);
    if (found.length > 0) known.set(key, found);
    return found;
  };
}

const holdsKept = new WeakMap<Tuning, Map<number, readonly Hold[]>>();

function stepOf(
  e: NoteEvent,
  event: number,
  pitches: readonly Pitch[],
  tuning: Tuning,
  problems: Problem[],
): Step {
  const all = holdsOf(pitches, tuning, e.fingers, true);
  if (all.length === 0) return awkwardChord(e, event, pitches, tuning, problems);
  const marked = all.filter(h => usesFingers(h, e.fingers));
  if (marked.length > 0) return { event, pitches, holds: marked };
  const plain = holdsOf(pitches, tuning, [], true);
  problems.push(
    problem('finger-mark', 'warning', e.place, {
      facts: { note: e.id, pitch: e.pitches.map(pitchName).join(' ') },
      actual: e.fingers.join(' '),
      expected: [...new Set(plain.map(h => h.stops.map(s => s.finger).join(' ')))],
    }),
  );
  return { event, pitches, holds: plain };
}

/** A chord that no neighbouring strings can play: its notes apart, or its top note alone. */
function awkwardChord(
  e: NoteEvent,
  event: number,
  pitches: readonly Pitch[],
  tuning: Tuning,
  problems: Problem[],
): Step {
  const apart = holdsOf(pitches, tuning, [], false);
  problems.push(
    problem('chord-strings', 'warning', e.place, {
      facts: { note: e.id, strings: apart.length > 0 ? 'apart' : 'too-few' },
      actual: pitches.map(pitchName).join(' '),
    }),
  );
  if (apart.length > 0) return { event, pitches, holds: apart };
  const top = pitches.slice(-1);
  return { event, pitches: top, holds: holdsOf(top, tuning, [], true) };
}

/** Whether each written finger is one of the hold's, no stop counted twice. */
function usesFingers(hold: Hold, fingers: readonly number[]): boolean {
  const free = hold.stops.map(s => s.finger);
  return fingers.every(f => {
    const i = free.indexOf(f);
    if (i >= 0) free.splice(i, 1);
    return i >= 0;
  });
}

/** The hold chosen for each step. */
function cheapestPath(steps: readonly Step[], tune: Tune): readonly (Hold | undefined)[] {
  const from: number[][] = [];
  let sums: number[] = [];
  let before: Step | undefined;
  for (const step of steps) {
    const came: number[] = [];
    const next: number[] = [];
    for (const hold of step.holds) {
      let best = 0;
      let sum = before ? Number.POSITIVE_INFINITY : 0;
      for (let i = 0; before && i < before.holds.length; i++) {
        const s = (sums[i] ?? 0) + moveCost(before, before.holds[i] as Hold, hold, tune);
        if (s >= sum) continue;
        sum = s;
        best = i;
      }
      came.push(best);
      next.push(sum + hold.cost);
    }
    from.push(came);
    sums = next;
    before = step;
  }
  const chosen = new Array<Hold | undefined>(steps.length);
  let at = sums.indexOf(Math.min(...sums));
  for (let t = steps.length - 1; t >= 0; t--) {
    chosen[t] = steps[t]?.holds[at];
    at = from[t]?.[at] ?? 0;
  }
  return chosen;
}

/** What the bow crosses from one hold to the next. A tie that leaves its string is no tie. */
function moveCost(before: Step, last: Hold, next: Hold, tune: Tune): number {
  const crossed = Math.max(0, next.top - last.bottom, last.top - next.bottom);
  const event = tune.events[before.event];
  const held = event?.kind === 'note' && event.tied;
  return crossed * crossingCost + (held && crossed > 0 ? 1000 : 0);
}

function stopsAt(e: NoteEvent, step: Step, hold: Hold | undefined): readonly (Stop | null)[] {
  if (hold && step.pitches.length === e.pitches.length) return hold.stops;
  return e.pitches.map(p => hold?.stops[step.pitches.indexOf(p)] ?? null);
}
