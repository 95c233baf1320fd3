import { at } from '../must.ts';
import type { SoundingPassage, SoundingStroke } from './sounding.ts';

/**
 * The passage with some of its notes (indices into `performance.notes`) left silent: time goes on
 * through them, and the bow is not on the string. A stroke that loses a note in its midst sounds
 * before and after it.
 */
export function silenceNotes(
  passage: SoundingPassage,
  silent: ReadonlySet<number>,
): SoundingPassage {
  const gaps = passage.notes.filter(n => silent.has(n.note));
  if (gaps.length === 0) return passage;
  const strokes = passage.strokes.flatMap(stroke => {
    let left: readonly SoundingStroke[] = [stroke];
    for (const gap of gaps) left = left.flatMap(s => withoutSpan(s, gap.at, gap.until));
    return left;
  });
  return { ...passage, strokes };
}

/** What of a stroke sounds outside a span of time: none, one or two strokes. */
function withoutSpan(stroke: SoundingStroke, from: number, until: number): SoundingStroke[] {
  const near = 1e-6;
  if (from >= stroke.until - near || until <= stroke.from + near) return [stroke];
  const before = stroke.tones.filter(t => t.at < from - near);
  const after = stroke.tones.filter(t => t.at >= until - near);
  return [
    ...(before.length > 0 ? [{ ...stroke, until: from, runsOn: false, tones: before }] : []),
    ...(after.length > 0 ? [{ ...stroke, from: at(after, 0).at, tones: after }] : []),
  ];
}
