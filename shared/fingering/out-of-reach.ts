import { diatonic, type Pitch, pitchName } from '../music/pitch.ts';
import type { NoteEvent } from '../music/tune.ts';
import { at } from '../must.ts';
import { type Problem, problem } from '../problem.ts';
import type { Tuning } from './fingering.ts';

/**
 * Warns of a pitch that first position does not reach, once, at the first of `notes`, all those that
 * have it. Facts: `pitch`; `times` it is written; `where`, `below` the lowest string or `above` first
 * position; for the latter the shift: `position`, `finger`, `string`.
 *
 * The shift is to the odd position, third first, in which the fourth finger reaches it: the third is
 * the first that fiddlers learn after the first (common practice). In the nth position the finger is
 * the letter steps above the open string, less n - 1.
 */
export function outOfReach(p: Pitch, notes: readonly NoteEvent[], tuning: Tuning): Problem {
  const first = at(notes, 0);
  const [pitch, times] = [pitchName(p), notes.length];
  const string = tuning.findIndex(open => open.midi <= p.midi);
  const open = tuning[string];
  if (!open) {
    const facts = { note: first.id, pitch, times, where: 'below' } as const;
    const expected = [pitchName(tuning[3])];
    return problem('out-of-reach', first.place, { facts, actual: pitch, expected });
  }
  const steps = diatonic(p) - diatonic(open);
  const position = Math.max(3, steps - 3 + ((steps - 3 + 1) % 2));
  const shift = { position, finger: steps - (position - 1), string: string + 1 };
  const facts = { note: first.id, pitch, times, where: 'above', ...shift } as const;
  return problem('out-of-reach', first.place, { facts, actual: pitch });
}
