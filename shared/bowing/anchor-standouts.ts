import type { Fingering } from '../fingering/fingering.ts';
import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { type PassageStroke, type Standout, standoutsOf } from '../sections/standouts.ts';
import type { Anchor, StrokePlan } from './bowing.ts';

/** Finds what stands out in an anchor, in its first pass. */
export function anchorStandouts(
  tune: Tune,
  performance: Performance,
  fingering: Fingering,
  plan: StrokePlan,
  anchor: Pick<Anchor, 'first' | 'last'>,
): Standout[] {
  const inside = (event: number): boolean => anchor.first <= event && event <= anchor.last;
  const { notes } = performance;
  const from = notes.findIndex(n => inside(n.event));
  const strokes: (PassageStroke & { readonly notes: number[] })[] = [];
  let before: number | null = null;
  for (let i = Math.max(0, from); i < notes.length; i++) {
    const note = notes[i];
    const stroke = plan.strokeOf[i];
    if (!note || stroke === undefined || !inside(note.event)) break;
    // The notes of a second pass are the same.
    if (strokes.some(s => s.notes.includes(note.event))) break;
    const direction = plan.strokes[stroke]?.direction;
    if (stroke === before) strokes.at(-1)?.notes.push(note.event);
    else if (direction) strokes.push({ direction, notes: [note.event] });
    before = stroke;
  }
  return standoutsOf(tune, fingering, anchor, strokes);
}
