import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create } from 'fontkit';
import { expect, it } from 'vitest';
import { packageRoot } from '../../src/pages/package-root.ts';
import { printFonts } from '../../src/print/print-fonts.ts';
import { unwrapFont } from '../../src/print/unwrap-font.ts';

const woff = readFileSync(
  join(packageRoot(), 'node_modules/@fontsource/andika/files/andika-latin-ext-400-normal.woff'),
);

it('unwraps a font that a second reader finds whole, under the name given', () => {
  const [packed, font] = [create(woff), create(unwrapFont(woff, 'Andika far'))];
  expect(font.familyName).toBe('Andika far');
  expect(font.characterSet).toEqual(packed.characterSet);
  expect(font.numGlyphs).toBe(packed.numGlyphs);
  expect(font.glyphForCodePoint(0x151).advanceWidth).toBe(
    packed.glyphForCodePoint(0x151).advanceWidth,
  );
});

it('gives every table the checksum of the standard (OpenType, organization of an OpenType font)', () => {
  const font = unwrapFont(woff, 'Andika far');
  const count = font.readUInt16BE(4);
  expect(count).toBeGreaterThan(8);
  for (let i = 0; i < count; i++) {
    const at = 12 + 16 * i;
    const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
    expect(offset % 4).toBe(0);
    let sum = 0;
    for (let k = 0; k < length; k += 4) sum = (sum + font.readUInt32BE(offset + k)) >>> 0;
    expect(sum).toBe(font.readUInt32BE(at + 4));
  }
});

it('refuses what is not a font of that kind', () => {
  expect(() => unwrapFont(Buffer.from('wOF2 and more'), 'x')).toThrow(/WOFF/);
});

it('knows what can be printed: letters with accents, quotes and the three signs, not all of Unicode', () => {
  const { has } = printFonts(packageRoot());
  for (const c of 'aZ0é őžłđ “”’–… ♯♭♮ Київ') expect(has(c), c).toBe(true);
  for (const c of '☃漢👋') expect(has(c), c).toBe(false);
});
