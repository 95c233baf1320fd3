import { join } from 'node:path';
import { openSync } from 'fontkit';
import { expect, test } from 'vitest';
import { measureText } from '../../shared/engraving/measure-text.ts';

const file = join(
  import.meta.dirname,
  '../../node_modules/@fontsource/andika/files/andika-latin-400-normal.woff2',
);
const font = openSync(file);
const inFont = (text: string): number => font.layout(text).advanceWidth / font.unitsPerEm;

test.each(['Am7', 'D7', 'G/B', 'Bm', 'F#dim', 'Em'])(
  '%s is as wide as in the font, within 1 %%',
  text => {
    expect(Math.abs(measureText(text, 1).width / inFont(text) - 1)).toBeLessThan(0.01);
  },
);

test('every character has the width of its glyph', () => {
  for (let code = 32; code < 127; code++) {
    const glyph = font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm;
    expect(measureText(String.fromCodePoint(code), 1).width).toBeCloseTo(glyph, 2);
  }
});
