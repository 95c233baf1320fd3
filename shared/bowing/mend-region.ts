import type { BowingInput } from './bowing-input.ts';
import { type LaidStrokes, strokeAt } from './lay-strokes.ts';
import { type BowingContext, leadInModel, presetOf } from './lead-in-of.ts';
import type { MendRegion } from './mends.ts';
import type { Level } from './settings.ts';

/** Makes a region for mends of the sounded notes from `from` to `end` (not included), with the limits of a level. */
export function mendRegion(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  from: number,
  end: number,
  level: Level = context.settings.level,
  preset: string | null = null,
): MendRegion {
  const start = strokeAt(laid, from).direction;
  const form = leadInModel(context, from, end, score.joined, {
    start,
    arrive: start,
    level,
    preset: presetOf(context.settings, context.tune, preset),
  });
  const lifts: number[] = [];
  for (let k = from + 1; k <= end; k++) {
    const note = score.performance.notes[k];
    if (note && (note.afterGap || context.phraseStarts.has(note.event))) lifts.push(k);
  }
  return { from, end, form, lifts };
}
