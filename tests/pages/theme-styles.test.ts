import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrastOf } from '../../shared/contrast.ts';
import { themeStyles } from '../../src/pages/theme-styles.ts';

const tokensOf = (css: string): Readonly<Record<string, string>> =>
  Object.fromEntries([...css.matchAll(/--([a-z]+): (#[0-9a-f]{6});/g)].map(m => [m[1], m[2]]));

const colour = fc
  .integer({ min: 0, max: 0xffffff })
  .map(n => `#${n.toString(16).padStart(6, '0')}`);

describe('the teacher’s colours', () => {
  it('change nothing where the book gives none', () => {
    expect(themeStyles(null)).toBe('');
    expect(themeStyles({ ink: null, paper: null, accent: null, picture: 'media/x.jpg' })).toBe('');
  });

  it('stay legible in every tint, by the contrast of WCAG 2.2, wherever the three are', () => {
    fc.assert(
      fc.property(colour, colour, colour, (ink, paper, accent) => {
        fc.pre(contrastOf(ink, paper) >= 4.5 && contrastOf(accent, paper) >= 4.5);
        const tokens = tokensOf(themeStyles({ ink, paper, accent, picture: null }));
        for (const ground of ['paper', 'sheet', 'tint', 'warm']) {
          for (const text of ['ink', 'spruce']) {
            expect(contrastOf(tokens[text] ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(
              4.5,
            );
          }
        }
        for (const ground of ['paper', 'sheet']) {
          expect(contrastOf(tokens.soft ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(4.5);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
