import type { Shape } from './drawing-surface.ts';
import { lineWidth } from './lay-out-lines.ts';
import { barPath, fine, readBar, short } from './write-path.ts';
import { flattened, type Pen, useGlyph } from './write-shapes.ts';

/**
 * A note that is no more than a head and its stem is one element: a glyph of its own, `Nu26` being a
 * filled head with its stem up to 26 units over the head's origin. How far a stem reaches into its
 * beam is not seen, so such ends are chosen among few.
 */

/** A beam: the edges of its band at both its ends. */
export interface Beam {
  readonly left: number;
  readonly right: number;
  readonly top: readonly [left: number, right: number];
  readonly bottom: readonly [left: number, right: number];
}

/** The beams of a line, a band each. */
export function readBeams(shapes: readonly Shape[]): readonly Beam[] {
  const beams: Beam[] = [];
  for (const shape of shapes) {
    if (shape.tag !== 'path') continue;
    const bands = (shape.attributes.path ?? '').matchAll(
      /M(\S+) (\S+) L(\S+) (\S+)L(\S+) (\S+) L(\S+) (\S+?)z/g,
    );
    for (const band of bands) {
      const [ax, ay, bx, by] = [Number(band[1]), Number(band[2]), Number(band[3]), Number(band[4])];
      const [cy, dy] = [Number(band[6]), Number(band[8])];
      beams.push({
        left: ax,
        right: bx,
        top: [Math.min(ay, dy), Math.min(by, cy)],
        bottom: [Math.max(ay, dy), Math.max(by, cy)],
      });
    }
  }
  return beams;
}

/** Heads that take a stem. */
const heads: ReadonlySet<string> = new Set(['N', 'H']);
/** Where a stem begins in its head, over or under the head's origin: about the middle of its side. */
const foot = 1;
/** Of two units, one always ends within a beam, which is nearly four high. */
const coarse = 2;

/** Writes a plain note as one element with the given attributes; null where it is not plain. */
export function writePlainNote(
  shapes: readonly Shape[],
  beams: readonly Beam[],
  attributes: string,
  { dy, glyphs }: Pen,
): string | null {
  const parts = flattened(shapes);
  if (parts.length !== 2 || parts.some(s => s.tag !== 'path' || s.getAttribute('transform')))
    return null;
  const [first, second] = parts.map(s => s.outline);
  const outline = first ?? second;
  const stem = readBar(parts[first ? 1 : 0]?.attributes.path ?? '');
  if (!outline || stem?.thickness !== lineWidth) return null;
  const head = useGlyph(outline.steps, glyphs);
  if (!heads.has(head.id)) return null;
  const [x, y] = [outline.x - head.x, outline.y - head.y];
  const stemX = stem.from[0];
  const ends = [stem.from[1], stem.to[1]];
  const up = stemX > x + 4;
  const tip = up ? Math.min(...ends) : Math.max(...ends);
  const length = stemLength(Math.abs(tip - y), y, stemX, up, beams);
  const id = `${head.id}${up ? 'u' : 'd'}${length}`;
  if (!glyphs.glyphs.has(id)) {
    const from = [fine(stemX - x), up ? -foot : foot] as const;
    const line = barPath({ from, to: [from[0], up ? -length : length], thickness: lineWidth }, 0);
    glyphs.glyphs.set(id, `<g id="${id}"><use href="#${head.id}"/><path d="${line}"/></g>`);
  }
  return `<use ${attributes} href="#${id}" x="${short(x)}" y="${short(y + dy)}"/>`;
}

/** How far a stem reaches from its head's origin: to the twentieth, or to somewhere within its beam. */
function stemLength(
  exact: number,
  y: number,
  x: number,
  up: boolean,
  beams: readonly Beam[],
): number {
  const tip = up ? y - exact : y + exact;
  const near = 0.7;
  for (const { left, right, top, bottom } of beams) {
    if (x < left - near || x > right + near) continue;
    const t = Math.min(1, Math.max(0, (x - left) / (right - left)));
    const high = top[0] + (top[1] - top[0]) * t;
    const low = bottom[0] + (bottom[1] - bottom[0]) * t;
    if (tip < high - near || tip > low + near) continue;
    const farthest = up ? y - high : low - y;
    return coarse * Math.floor((farthest - 0.3) / coarse);
  }
  return fine(exact);
}
