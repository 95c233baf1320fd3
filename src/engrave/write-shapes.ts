import type { Shape } from './drawing-surface.ts';
import { type GlyphId, glyphOf } from './glyph-ids.ts';
import { lineWidth } from './lay-out-lines.ts';
import {
  barPath,
  type Outline,
  pair,
  readBar,
  short,
  shortPath,
  shortSteps,
} from './write-path.ts';

/** Glyphs met so far, each kept once, by id. */
export interface GlyphCase {
  readonly glyphs: Map<string, string>;
}

export const makeGlyphCase = (): GlyphCase => ({ glyphs: new Map() });

/** Where shapes go: how far down, and the glyphs that they share. */
export interface Pen {
  readonly dy: number;
  readonly glyphs: GlyphCase;
}

/**
 * Shapes as SVG: glyphs as `<use>`, lines of one thickness joined into one path, other outlines
 * into another, texts with their size only. They are to stand in a drawing whose lines are
 * `lineWidth` thick.
 */
export function writeShapes(shapes: readonly Shape[], pen: Pen): string {
  const flat = flattened(shapes);
  const texts = flat.filter(s => s.tag === 'text');
  const glyphs: string[] = [];
  const lines = new Map<number, string>();
  const draw = (width: number, path: string): void =>
    void lines.set(width, (lines.get(width) ?? '') + path);
  let [filled, dotted] = ['', ''];
  for (const shape of flat) {
    if (shape.tag !== 'path') continue;
    const { outline } = shape;
    if (outline) {
      glyphs.push(writeGlyph(shape, outline, pen));
      continue;
    }
    const path = shape.attributes.path ?? '';
    const bar = readBar(path);
    if (bar) draw(bar.thickness, barPath(bar, pen.dy));
    else if (shape.attributes['stroke-dasharray']) dotted += shortPath(path, 0, pen.dy);
    else if ((shape.attributes.stroke ?? 'none') !== 'none')
      draw(bracketWidth, shortPath(path, 0, pen.dy));
    else filled += shortPath(path, 0, pen.dy);
  }
  return [
    ...glyphs,
    ...[...lines].map(
      ([width, d]) =>
        `<path${width === lineWidth ? '' : ` stroke-width="${trimmed(width)}"`} d="${d}"/>`,
    ),
    filled && `<path stroke="none" d="${filled}"/>`,
    dotted && `<path fill="none" stroke-width=".7" stroke-dasharray="3 2" d="${dotted}"/>`,
    texts.length > 0 ? `<g stroke="none">${texts.map(s => writeText(s, pen)).join('')}</g>` : '',
  ].join('');
}

/** Lines that abcjs strokes, which are those of a triplet's bracket. */
const bracketWidth = 1;

/** The shapes that are drawn, groups opened. */
export const flattened = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.some(s => s.tag === 'g')
    ? shapes.flatMap(s => (s.tag === 'g' ? flattened(s.children) : [s]))
    : shapes;

function writeGlyph(shape: Shape, outline: Outline, { dy, glyphs }: Pen): string {
  const glyph = useGlyph(outline.steps, glyphs);
  const [x, y] = [outline.x - glyph.x, outline.y - glyph.y];
  const small = /translate\((\S+) (\S+)\) scale\(([\d.]+),/.exec(
    shape.getAttribute('transform') ?? '',
  );
  if (!small) return `<use href="#${glyph.id}" x="${short(x)}" y="${short(y + dy)}"/>`;
  const [ox, oy, scale] = [Number(small[1]), Number(small[2]), Number(small[3])];
  const place = `${short(ox + scale * (x - ox))} ${short(oy + scale * (y - oy) + dy)}`;
  return `<use href="#${glyph.id}" transform="translate(${place})scale(${trimmed(scale)})"/>`;
}

/** A factor written short. */
export const trimmed = (n: number): string => `${n}`.replace(/^0/, '');

/** The glyph that steps draw, kept in the case. */
export function useGlyph(steps: string, { glyphs }: GlyphCase): GlyphId {
  const glyph = glyphOf(steps);
  if (!glyphs.has(glyph.id)) {
    const symbol = symbols.get(glyph.id) ?? writeSymbol(glyph, steps);
    symbols.set(glyph.id, symbol);
    glyphs.set(glyph.id, symbol);
  }
  return glyph;
}

/** Every glyph that a tune used, written once: no more than abcjs has glyphs. */
const symbols = new Map<string, string>();

const writeSymbol = ({ id, x, y }: GlyphId, steps: string): string =>
  `<path id="${id}" stroke="none" d="M${pair(x, y)}${shortSteps(steps)}"/>`;

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
