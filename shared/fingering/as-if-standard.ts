import { diatonic, letters, type Pitch, pitch } from '../music/pitch.ts';
import { at } from '../must.ts';
import type { Stop, Tuning } from './fingering.ts';
import { fiddleTuning } from './tunings.ts';

/**
 * The note that the same finger in the same place gives on a fiddle as it comes: what players of
 * retuned fiddles call a note who think in their usual fingering, and what is printed where a part
 * is written by the hand rather than by the ear.
 *
 * AEAE pulls the two lower strings up a tone. B3, first finger on the low A string, is as if A3,
 * first finger on the G string; on the two upper strings every note is itself. Letter steps and
 * semitones above the open string stay what they are, so spelling moves with them.
 */
export function asIfStandard(p: Pitch, stop: Stop, tuning: Tuning): Pitch {
  const [open, usual] = [at(tuning, stop.string - 1), at(fiddleTuning, stop.string - 1)];
  if (open.midi === usual.midi) return p;
  const midi = usual.midi + (p.midi - open.midi);
  const steps = diatonic(usual) + (diatonic(p) - diatonic(open));
  return spelled(steps, midi) ?? spelled(diatonic(usual) + stop.finger, midi) ?? p;
}

/** The pitch with that letter; null where it would need more than a sharp or a flat. */
function spelled(steps: number, midi: number): Pitch | null {
  const octave = Math.floor(steps / 7);
  const letter = at(letters, steps - octave * 7);
  const alter = midi - pitch(letter, 0, octave).midi;
  return Math.abs(alter) <= 1 ? pitch(letter, alter, octave) : null;
}
