import { describe, expect, it } from 'vitest';
import { sizesFor } from '../../src/print/sizes.ts';
import { colours, staffHeights } from './measure-page.ts';
import {
  pageSvg,
  pageTexts,
  poppler,
  popplerMissing,
  spokenAlternatives,
  textSizes,
} from './poppler.ts';
import { files, printOf } from './print-class.ts';

const sheet = (options: Parameters<typeof printOf>[1] = {}): Buffer =>
  printOf(files, { what: 'sheets', only: 'quay-reel', ...options }).pdf;

describe.skipIf(popplerMissing !== null)('a sheet, measured', () => {
  it.each([
    // MOLA's guidelines: 7.5 mm for parts. Children 8 to 9, large print 10 to 12: common practice.
    ['adults', 7.5, 7.6],
    ['children', 8, 9],
    ['large', 10, 12],
  ] as const)('has staves for %s of %d to %d mm', (audience, least, most) => {
    const svg = pageSvg(sheet({ audience }), 1);
    const staves = staffHeights(svg);
    expect(staves.length).toBeGreaterThan(1);
    for (const height of staves) {
      expect(height).toBeGreaterThan(least - 0.05);
      expect(height).toBeLessThan(most + 0.05);
    }
  });

  it('has no text in large print below 16 points', () => {
    // UK Association for Accessible Formats: large print is 16 points at least.
    const sizes = textSizes(sheet({ audience: 'large' }));
    expect(sizes.length).toBeGreaterThan(1);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(16);
  });

  it.each([
    ['a4', 595.3, 841.9],
    ['letter', 612, 792],
  ] as const)('fits %s, with a margin of 10 mm all round', (paper, width, height) => {
    const pdf = sheet({ paper, audience: 'large' });
    const info = poppler('pdfinfo', pdf);
    const [, w, h] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info) ?? [];
    expect(Number(w)).toBeCloseTo(width, 0);
    expect(Number(h)).toBeCloseTo(height, 0);
    const words = poppler('pdftotext', pdf, ['-bbox'], ['-']);
    const margin = 10 / (25.4 / 72) - 0.5;
    for (const [, x, y, toX, toY] of words.matchAll(
      /xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)"/g,
    )) {
      expect(Number(x)).toBeGreaterThan(margin);
      expect(Number(y)).toBeGreaterThan(margin);
      expect(Number(toX)).toBeLessThan(width - margin);
      expect(Number(toY)).toBeLessThan(height - margin);
    }
  });

  it('is drawn in greys alone', () => {
    const found = colours(pageSvg(sheet(), 1));
    expect(found.length).toBeGreaterThan(10);
    for (const [red, green, blue] of found) expect([green, blue]).toEqual([red, red]);
  });

  it('carries the credits, and where all play alike', () => {
    const [text = ''] = pageTexts(sheet());
    expect(text).toContain('By Ansa Loom, 2024');
    expect(text).toContain('A4: reach it on an up-bow.');
  });
});

describe.skipIf(popplerMissing !== null)('the fading steps', () => {
  const staves = (step: 1 | 2 | 3 | 4 | 5): number =>
    staffHeights(pageSvg(sheet({ steps: [step] }), 1)).length;
  const [, , , first, last] = ([1, 2, 3, 4, 5] as const).map(
    s => pageTexts(sheet({ steps: [s] }))[0] ?? '',
  );

  it('take the notation away, then the map, then the first notes', () => {
    const all = staves(1);
    expect(all).toBeGreaterThan(2);
    expect(staves(2)).toBe(all);
    expect(staves(3)).toBe(0);
    // The first of its two rows.
    expect(staves(4)).toBe(all / 2);
    expect(staves(5)).toBe(0);
    expect(first).not.toContain('Part A');
    expect(last).toContain('The Quay Reel');
    expect(last).not.toContain('Part A');
  });

  it('stand one after another where several are asked for', () => {
    const { pages, notes } = printOf(files, {
      what: 'sheets',
      only: 'quay-reel',
      steps: [1, 3, 5],
    });
    expect(pages).toBe(3);
    expect(notes.filter(n => n.kind === 'tune').map(n => n.page)).toEqual([1, 2, 3]);
  });

  it('do not say aloud what they leave out', () => {
    const said = (step: 1 | 2): string => spokenAlternatives(sheet({ steps: [step] })).join(' ');
    expect(said(1)).toMatch(/A2\. \w+: G/);
    expect(said(2)).not.toMatch(/A2\. \w+: G/);
  });
});

describe.skipIf(popplerMissing !== null)('the marks', () => {
  it('are fewer in each of the three densities', () => {
    const strokes = (marks: 'all' | 'starts' | 'anchors'): number =>
      (pageSvg(sheet({ marks }), 1).match(/<path /g) ?? []).length;
    const lengths = (['all', 'starts', 'anchors'] as const).map(
      m => pageSvg(sheet({ marks: m }), 1).length,
    );
    expect(lengths[0]).toBeGreaterThan(lengths[1] ?? 0);
    expect(lengths[1]).toBeGreaterThan(lengths[2] ?? 0);
    expect(strokes('all')).toBeGreaterThan(strokes('anchors'));
  });

  it('come with fingers and letters for children, and as asked for', () => {
    expect(sizesFor.children).toMatchObject({ fingers: true, letters: true });
    const text = (options: Parameters<typeof sheet>[0]): string =>
      pageTexts(sheet(options)).join('');
    expect(text({ audience: 'children', letters: false }).length).toBeLessThan(
      text({ audience: 'children' }).length,
    );
    expect(text({ fingers: true }).length).toBeGreaterThan(text({}).length);
  });
});
