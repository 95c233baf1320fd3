import glyphs from 'abcjs/src/write/creation/glyphs.js';
import type { Outline } from './write-path.ts';

/** As many as abcjs has glyphs. */
const known = new Map<string, Outline>();

/** A glyph of abcjs's with its origin at 0; null where it has none of that name. Printed once and kept. */
export function glyphNamed(name: string): Outline | null {
  const kept = known.get(name);
  if (kept) return kept;
  const [start, ...steps] = glyphs.getPathForSymbol(0, 0, name) ?? [];
  if (!start) return null;
  const [, x = 0, y = 0] = start;
  const outline: Outline = { x, y, steps: steps.map(s => s.join(' ')).join('') };
  known.set(name, outline);
  return outline;
}

/**
 * abcjs prints the whole outline of a glyph for every note that it draws. A surface that takes
 * glyphs by name, as ours does, is given that instead; on any other it prints as ever.
 */
const printSymbol = glyphs.printSymbol;
glyphs.printSymbol = (x, y, name, paper, attributes) =>
  paper.glyph ? paper.glyph(name, x, y, attributes) : printSymbol(x, y, name, paper, attributes);
