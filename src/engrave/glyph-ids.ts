import { glyphNamed } from './glyph-outlines.ts';

/** The glyphs of a fiddle tune, each with a short id of its own; others are named by their outline. */
const named = [
  ['noteheads.quarter', 'N'],
  ['noteheads.half', 'H'],
  ['noteheads.whole', 'W'],
  ['clefs.G', 'C'],
  ['accidentals.sharp', 'S'],
  ['accidentals.flat', 'F'],
  ['accidentals.nat', 'Q'],
  ['accidentals.dblsharp', 'SS'],
  ['accidentals.dblflat', 'FF'],
  ['dots.dot', 'D'],
  ['flags.u8th', 'U8'],
  ['flags.d8th', 'D8'],
  ['flags.u16th', 'U16'],
  ['flags.d16th', 'D16'],
  ['flags.ugrace', 'UG'],
  ['rests.whole', 'R1'],
  ['rests.half', 'R2'],
  ['rests.quarter', 'R4'],
  ['rests.8th', 'R8'],
  ['rests.16th', 'R16'],
  ['scripts.roll', 'L'],
  ['scripts.staccato', 'P'],
  ['timesig.common', 'TC'],
  ['timesig.cut', 'TX'],
  ...[...'0123456789'].map(figure => [figure, `T${figure}`] as const),
] as const;

/** A glyph by its outline: its id, and where its outline begins, counted from its own origin. */
export interface GlyphId {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

const byOutline = new Map(
  named.flatMap(([name, id]): [string, GlyphId][] => {
    const outline = glyphNamed(name);
    return outline ? [[outline.steps, { id, x: outline.x, y: outline.y }]] : [];
  }),
);

/**
 * The glyph that relative steps draw. The same outline has the same id in every tune, so that a page
 * can hold several; ids begin with a capital, unlike any other on a page.
 */
export function glyphOf(steps: string): GlyphId {
  const known = byOutline.get(steps);
  if (known) return known;
  let hash = 2166136261;
  for (const c of steps) hash = Math.imul(hash ^ (c.codePointAt(0) ?? 0), 16777619) >>> 0;
  const made = { id: `G${hash.toString(36).slice(-4)}`, x: 0, y: 0 };
  byOutline.set(steps, made);
  return made;
}
