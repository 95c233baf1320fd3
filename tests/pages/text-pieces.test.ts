import { describe, expect, it } from 'vitest';
import { type HeldTexts, held, inPieces } from '../../src/pages/text-pieces.ts';
import { demoPages } from './demo-class.ts';

describe('long texts held while a template is filled', () => {
  it('come back in their places, one within another', () => {
    const texts: HeldTexts = [];
    const inner = 'i'.repeat(9000);
    const outer = held(`${'o'.repeat(9000)}${held(inner, texts)}.`, texts);
    const filled = `before ${outer} between ${held('short', texts)} after`;
    expect(filled.length).toBeLessThan(120);
    const pieces = [...inPieces(filled, texts)];
    expect(pieces.join('')).toBe(`before ${'o'.repeat(9000)}${inner}. between short after`);
    expect(Math.max(...pieces.map(p => p.length))).toBe(9000);
  });

  it('leave no mark on a page', () => {
    const texts: HeldTexts = [];
    const [sign] = held('x'.repeat(9000), texts).slice(1).split(' ');
    const pages = demoPages(false);
    expect(pages.filter(p => p.html.includes(`${sign}`))).toEqual([]);
    expect(Math.max(...pages.map(p => p.html.length))).toBeGreaterThan(20_000);
  });
});
