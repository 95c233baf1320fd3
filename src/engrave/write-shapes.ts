import type { Shape } from './drawing-surface.ts';
import { readOutline, short, shortPath, shortSteps } from './write-path.ts';

/** Glyphs met so far, each kept once: outline to symbol id, and id to `<symbol>`. */
export interface GlyphCase {
  readonly ids: Map<string, string>;
  readonly symbols: Map<string, string>;
}

export const makeGlyphCase = (): GlyphCase => ({ ids: new Map(), symbols: new Map() });

/** Where shapes go: how far down, and the glyphs that they share. */
export interface Pen {
  readonly dy: number;
  readonly glyphs: GlyphCase;
}

/** Shapes as SVG: glyphs as `<use>`, other paths joined into one, texts with their size only. */
export function writeShapes(shapes: readonly Shape[], pen: Pen): string {
  const flat = shapes.flatMap(leaves);
  const paths = flat.filter(s => s.tag === 'path');
  const drawn: string[] = [];
  let filled = '';
  for (const shape of paths) {
    const path = shape.attributes.path ?? '';
    const outline = readOutline(path);
    if (outline) drawn.push(writeGlyph(shape, outline, pen));
    else if (shape.attributes['stroke-dasharray']) {
      drawn.push(`<path class="dotted" d="${shortPath(path, 0, pen.dy)}"/>`);
    } else filled += shortPath(path, 0, pen.dy);
  }
  if (filled) drawn.push(`<path d="${filled}"/>`);
  return (
    drawn.join('') +
    flat
      .filter(s => s.tag === 'text')
      .map(s => writeText(s, pen))
      .join('')
  );
}

const leaves = (shape: Shape): readonly Shape[] =>
  shape.tag === 'g' ? shape.children.flatMap(leaves) : [shape];

function writeGlyph(
  shape: Shape,
  outline: { readonly x: number; readonly y: number; readonly steps: string },
  { dy, glyphs }: Pen,
): string {
  const id = glyphId(outline.steps, glyphs);
  const small = /translate\((\S+) (\S+)\) scale\(([\d.]+),/.exec(shape.attributes.transform ?? '');
  if (!small) return `<use href="#${id}" x="${short(outline.x)}" y="${short(outline.y + dy)}"/>`;
  const [ox, oy, scale] = [Number(small[1]), Number(small[2]), Number(small[3])];
  const x = short(ox + scale * (outline.x - ox));
  const y = short(oy + scale * (outline.y - oy) + dy);
  return `<use href="#${id}" transform="translate(${x} ${y})scale(${trimScale(scale)})"/>`;
}

const trimScale = (scale: number): string => `${scale}`.replace(/^0/, '');

/** The same outline has the same id in every tune, so that a page can hold several. */
function glyphId(steps: string, { ids, symbols }: GlyphCase): string {
  const known = ids.get(steps);
  if (known) return known;
  let hash = 2166136261;
  for (const c of steps) hash = Math.imul(hash ^ (c.codePointAt(0) ?? 0), 16777619) >>> 0;
  const id = `g${hash.toString(36).slice(-4)}`;
  ids.set(steps, id);
  symbols.set(
    id,
    `<symbol id="${id}" overflow="visible"><path d="M0 0${shortSteps(steps)}"/></symbol>`,
  );
  return id;
}

function writeText(shape: Shape, { dy }: Pen): string {
  const {
    x = '0',
    y = '0',
    'font-size': size,
    'text-anchor': anchor,
    'data-name': name,
  } = shape.attributes;
  const place = `x="${short(Number(x))}" y="${short(Number(y) + dy)}"`;
  const klass = name === 'chord' || name === 'lyric' || name === 'annotation' ? name : 'figure';
  const anchored = anchor && anchor !== 'start' ? ` text-anchor="${anchor}"` : '';
  return `<text class="${klass}" ${place} font-size="${size}"${anchored}>${escapeText(shape.text)}</text>`;
}

export const escapeText = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

export const escapeAttribute = (text: string): string => escapeText(text).replace(/"/g, '&quot;');
