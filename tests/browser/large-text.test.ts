/** @module-tag slow */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoSite, openDemoSite } from './demo-site.ts';

// Success criteria are those of WCAG 2.2, named by number.

let demo: DemoSite;
beforeAll(async () => {
  demo = await openDemoSite();
  expect(demo.pages.length).toBeGreaterThan(15);
});
afterAll(() => demo?.close());

const twice = 'html { font-size: 225% }'; // the book's own size is 112.5 %
const spaced =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }';
const rooms = [
  ['320 px (1.4.10 Reflow)', 320, ''],
  ['text twice as large (1.4.4 Resize Text)', 1280, twice],
  ['text twice as large on a phone', 390, twice],
  ['text set apart (1.4.12 Text Spacing)', 390, spaced],
] as const;

/** What runs over an edge: the page over the window's, or the words of a block over its own. */
const overflows = (page: Page, style: string): Promise<string[]> =>
  page.evaluate(css => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    document.adoptedStyleSheets = [sheet];
    const html = document.documentElement;
    const over = html.scrollWidth - html.clientWidth;
    const blocks = document.querySelectorAll<HTMLElement>('.map .phrase, .masthead a, .strokes li');
    const narrow = [...blocks]
      .filter(e => e.scrollWidth > e.clientWidth + 1)
      .map(
        e => `"${e.textContent?.trim().slice(0, 24)}" needs ${e.scrollWidth - e.clientWidth} px`,
      );
    return over > 0 ? [`the page needs ${over} px`, ...narrow] : narrow;
  }, style);

/** Every control that stands by itself; links in running text are free of the rule. */
const controls =
  'nav a, .masthead a, .colophon a, .layers label, summary, .button, a.phrase, .tune-shelf a, .lesson-list a, .downloads a, h2 a, h3 a, .more a, .skip';

describe('room for large text, narrow screens and fingers', () => {
  it('nothing runs over an edge', async () => {
    const found = await demo.onEveryPage({}, async page => {
      const inAll: string[] = [];
      for (const [name, width, style] of rooms) {
        await page.setViewportSize({ width, height: 800 });
        inAll.push(...(await overflows(page, style)).map(o => `${name}: ${o}`));
      }
      return inAll;
    });
    expect(found).toEqual([]);
  });

  it('every control is 24 by 24 px or more (2.5.8 Target Size)', async () => {
    let seen = 0;
    const found = await demo.onEveryPage({}, async page => {
      const inAll: string[] = [];
      for (const width of [360, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        const boxes = await page.evaluate(
          which =>
            [...document.querySelectorAll<HTMLElement>(which)]
              .filter(e => e.checkVisibility())
              .map(e => ({ name: e.textContent?.trim(), box: e.getBoundingClientRect() }))
              .map(({ name, box }) => ({ name, width: box.width, height: box.height })),
          controls,
        );
        seen += boxes.length;
        const small = boxes.filter(b => b.width < 24 || b.height < 24);
        inAll.push(...small.map(b => `at ${width}: "${b.name}" is ${b.width} by ${b.height} px`));
      }
      return inAll;
    });
    expect(seen).toBeGreaterThan(demo.pages.length * 10);
    expect(found).toEqual([]);
  });
});
