import { describe, expect, it } from 'vitest';
import { pageTexts, popplerMissing } from './poppler.ts';
import { files, printOf } from './print-class.ts';

/** Enough tunes for several small pages. */
const many = Object.fromEntries(
  Array.from({ length: 30 }, (_, n) => [
    `tunes/t${n}.md`,
    files['tunes/quay-reel.md']
      ?.replaceAll('quay-reel', `t${n}`)
      .replaceAll('The Quay Reel', `Reel Number ${String(n).padStart(2, '0')}`) ?? '',
  ]),
);

describe('the pocket booklet', () => {
  const printed = printOf({ 'bowbook.yaml': 'title: The Quay\n', ...many }, { what: 'pocket' });

  it('takes both sides of each sheet', () => {
    expect(printed.pages % 2).toBe(0);
    expect(printed.pages).toBeGreaterThan(0);
  });

  it.skipIf(popplerMissing !== null)(
    'holds every tune once, and its cover on the first side',
    () => {
      const sides = pageTexts(printed.pdf);
      expect(sides[0]).toContain('The Quay');
      expect(sides[0]).toContain('Cut every sheet');
      const text = sides.join('\n');
      for (let n = 0; n < 30; n++) {
        const title = `Reel Number ${String(n).padStart(2, '0')}`;
        expect(text.split(title).length - 1, title).toBe(1);
      }
    },
  );
});
