import { diatonic, type Pitch, pitchName } from '../music/pitch.ts';
import type { NoteEvent } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { Tuning } from './fingering.ts';
import { type Hold, holdsOf } from './stops-of.ts';

/** Pitches to play, those of a note that have a stop, and every way to hold them: one at least. */
export interface Ways {
  readonly pitches: readonly Pitch[];
  readonly holds: readonly Hold[];
}

/** The ways to hold a pitch alone, worked out once for each pitch of a tune; empty out of reach. */
export function singleHolds(tuning: Tuning): (p: Pitch) => readonly Hold[] {
  const known = new Map<number, readonly Hold[]>();
  return p => {
    // A letter and its alteration, -2 to 2, in one number.
    const spelling = diatonic(p) * 5 + p.alter;
    const found = known.get(spelling) ?? holdsOf([p], tuning, [], true);
    known.set(spelling, found);
    return found;
  };
}

/**
 * The ways to hold a chord, or a note with written fingers; every one of `pitches` has a stop. Adds
 * to `problems` what cannot be done: `finger-mark`, `chord-strings`.
 */
export function waysOf(
  e: NoteEvent,
  pitches: readonly Pitch[],
  tuning: Tuning,
  problems: Problem[],
): Ways {
  const all = holdsOf(pitches, tuning, e.fingers, true);
  if (all.length === 0) return waysOfAwkwardChord(e, pitches, tuning, problems);
  const marked = all.filter(h => usesFingers(h, e.fingers));
  if (marked.length > 0) return { pitches, holds: marked };
  const plain = holdsOf(pitches, tuning, [], true);
  problems.push(
    problem('finger-mark', e.place, {
      facts: { note: e.id, pitch: e.pitches.map(pitchName).join(' ') },
      actual: e.fingers.join(' '),
      expected: [...new Set(plain.map(h => h.stops.map(s => s.finger).join(' ')))],
    }),
  );
  return { pitches, holds: plain };
}

/** A chord that no neighbouring strings can play: on strings apart, else its top note alone. */
function waysOfAwkwardChord(
  e: NoteEvent,
  pitches: readonly Pitch[],
  tuning: Tuning,
  problems: Problem[],
): Ways {
  const apart = holdsOf(pitches, tuning, [], false);
  problems.push(
    problem('chord-strings', e.place, {
      facts: { note: e.id, strings: apart.length > 0 ? 'apart' : 'too-few' },
      actual: pitches.map(pitchName).join(' '),
    }),
  );
  if (apart.length > 0) return { pitches, holds: apart };
  const top = pitches.slice(-1);
  return { pitches: top, holds: holdsOf(top, tuning, [], true) };
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
