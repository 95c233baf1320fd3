import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { measureBold, measureText } from '../../shared/engraving/measure-text.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { jig, reel, slipJig } from '../engrave/test-tunes.ts';
import { sampleOfReal } from '../tunes/on-tunes.ts';
import { ownTunes } from '../tunes/own-tunes.ts';
import { startChromium } from './chromium.ts';
import { notationHtml, writeNotationPage } from './notation-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser?.close());

interface DrawnText {
  readonly text: string;
  readonly bold: boolean;
  readonly size: number;
  readonly width: number;
}

/** Every different text of the page, as wide as the browser draws it; fingers and letters one by one. */
function drawnTexts(): readonly DrawnText[] {
  const found = new Map<string, DrawnText>();
  for (const text of document.querySelectorAll<SVGTextElement>('.stave svg text')) {
    const style = getComputedStyle(text);
    const kind = { bold: Number(style.fontWeight) > 500, size: Number.parseFloat(style.fontSize) };
    const each = text.closest('.layer-fingers, .layer-letters') !== null;
    const content = text.textContent ?? '';
    const parts = each
      ? [...content].map((c, i) => ({ text: c, width: text.getSubStringLength(i, 1) }))
      : [{ text: content, width: text.getComputedTextLength() }];
    for (const part of parts) found.set(JSON.stringify([part.text, kind]), { ...part, ...kind });
  }
  return [...found.values()];
}

test('texts are as wide in the browser as the build takes them to be, within 1 % or 1 px', {
  timeout: 120_000,
}, async () => {
  const { tunes } = await studyBook('content', () => {});
  const studies = [
    ...tunes.flatMap(t => (t.study ? [t.study] : [])),
    ...[reel, jig, slipJig].map(text => composeStudy(text)),
    ...[...ownTunes.filter((_, i) => i % 4 === 0), ...sampleOfReal(17)].map(t =>
      composeStudy(t.abc),
    ),
  ];
  const page = writeNotationPage(notationHtml(studies.map(s => engraveTune(s))));
  const tab = await browser.newPage();
  await tab.goto(page.address);
  await tab.evaluate(() => document.fonts.ready);
  const texts = await tab.evaluate(drawnTexts);
  await tab.close();
  page.remove();
  expect(texts.length).toBeGreaterThan(40);
  const off = texts.flatMap(({ text, bold, size, width }) => {
    const built = (bold ? measureBold : measureText)(text, size).width;
    const apart = Math.abs(built - width);
    return apart <= 1 || apart <= 0.01 * width
      ? []
      : [`"${text}" at ${size}: ${built.toFixed(2)} in the build, ${width.toFixed(2)} drawn`];
  });
  const most = Math.max(
    ...texts.map(({ text, bold, size, width }) =>
      Math.abs((bold ? measureBold : measureText)(text, size).width - width),
    ),
  );
  console.log(`${texts.length} texts, at most ${most.toFixed(2)} px apart`);
  expect(off).toEqual([]);
});
