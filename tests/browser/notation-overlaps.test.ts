/** @module-tag slow */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Study } from '../../shared/study.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { jig, reel, slipJig } from '../engrave/test-tunes.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { startChromium } from './chromium.ts';
import { drawnLines, overlapsOf } from './drawn-boxes.ts';
import { type Layers, notationHtml, writeNotationPage } from './notation-page.ts';

/*
 * Nothing that a drawing is read by may stand on anything else: heads, accidentals, stroke signs,
 * fingers, letters, chord symbols, endings, letters of parts and phrases. Boxes are the browser's own.
 */

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser?.close());

async function overlaps(studies: readonly Study[], layers: Layers, width: number) {
  const page = writeNotationPage(notationHtml(studies.map(s => engraveTune(s))), layers);
  const tab = await browser.newPage({ viewport: { width, height: 900 } });
  try {
    await tab.goto(page.address, { timeout: 120_000 });
    await tab.evaluate(
      async titles => {
        await document.fonts.ready;
        for (const [i, section] of [...document.querySelectorAll('section')].entries()) {
          section.setAttribute('data-title', titles[i] ?? '');
        }
      },
      studies.map(s => s.tune.title),
    );
    const lines = await tab.evaluate(drawnLines);
    const boxes = lines.reduce((sum, { boxes }) => sum + boxes.length, 0);
    const found = lines.flatMap(overlapsOf);
    console.log(
      `${studies.length} tunes, ${layers.fingers ? 'all layers' : 'signs only'}, ${width} px: ` +
        `${boxes} boxes on ${lines.length} lines, ${found.length} overlaps`,
    );
    return { boxes, found };
  } finally {
    await tab.close();
    page.remove();
  }
}

const shown = [
  { fingers: true, letters: true },
  { fingers: false, letters: false },
];

describe('nothing stands on anything else', () => {
  test('in the demo book and the tests’ own tunes', { timeout: 300_000 }, async () => {
    const { tunes } = await studyBook('content', () => {});
    const studies = [
      ...tunes.flatMap(t => (t.study ? [t.study] : [])),
      ...[reel, jig, slipJig].map(text => composeStudy(text)),
    ];
    for (const layers of shown) {
      for (const width of [360, 1280]) {
        const { boxes, found } = await overlaps(studies, layers, width);
        expect(boxes).toBeGreaterThan(studies.length * 100);
        expect(found.slice(0, 20)).toEqual([]);
      }
    }
  });

  onTunes('in many tunes', 20, async tunes => {
    const studies = tunes.map(t => composeStudy(t.abc));
    for (const layers of shown) {
      const all: string[] = [];
      for (let i = 0; i < studies.length; i += 25) {
        const some = studies.slice(i, i + 25);
        const { boxes, found } = await overlaps(some, layers, 1280);
        expect(boxes).toBeGreaterThan(some.length * 100);
        all.push(...found);
      }
      expect(all.length, all.slice(0, 20).join('\n')).toBe(0);
    }
  });
});
