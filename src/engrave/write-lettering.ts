import { accidentalScale, accidentals, measureText } from '../../shared/engraving/measure-text.ts';
import { glyphNamed } from './glyph-outlines.ts';
import { short } from './write-path.ts';
import { escapeText, type GlyphCase, trimmed, useGlyph } from './write-shapes.ts';

/** An accidental among letters of a size: its left edge at `x`, on the base line `y`. */
export function writeAccidental(
  sign: string,
  [x, y]: readonly [number, number],
  size: number,
  glyphCase: GlyphCase,
): string {
  const glyph = useGlyph(glyphNamed(accidentals[sign]?.glyph ?? '')?.steps ?? '', glyphCase);
  const scale = Math.round(size * accidentalScale * 100) / 100;
  const place = `${short(x)} ${short(y - 0.36 * size)}`;
  return `<use href="#${glyph.id}" transform="translate(${place})scale(${trimmed(scale)})"/>`;
}

/** Words with accidentals among them, such as a chord symbol, their middle at `x`. */
export function writeLettering(
  text: string,
  [x, y]: readonly [number, number],
  size: number,
  glyphCase: GlyphCase,
): string {
  const runs = text.split(/([♯♭♮𝄪𝄫])/u).filter(run => run !== '');
  if (!runs.some(run => accidentals[run])) {
    return `<text x="${short(x)}" y="${short(y)}">${escapeText(text)}</text>`;
  }
  let left = x - measureText(text, size).width / 2;
  return runs
    .map(run => {
      const at = left;
      left += measureText(run, size).width;
      if (accidentals[run]) return writeAccidental(run, [at + 0.05 * size, y], size, glyphCase);
      return `<text text-anchor="start" x="${short(at)}" y="${short(y)}">${escapeText(run)}</text>`;
    })
    .join('');
}
