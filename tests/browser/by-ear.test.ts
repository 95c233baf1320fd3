import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { startChromium } from './chromium.ts';
import { awake, openAwake } from './open-awake.ts';

const folder = mkdtempSync(join(tmpdir(), 'bowbook-ear-'));
const address = pathToFileURL(join(folder, 'site/lessons/2026-11-03-by-ear.html')).href;
let browser: Browser;

const lesson = `---
title: By ear first
date: 2026-11-03
---

:::tune{#rope rights=own type=jig show=ear}
\`\`\`abc
X:1
T:A Length of Rope
R:jig
M:6/8
L:1/8
K:D
A|(de)f d2B|A3- ABd|{e}fe(d [DA])F^G,|D3 D2||
\`\`\`
:::

Only two bars of it:

::tune{of=rope bars="A1-A2" show=ear}

And a chain, :notes[(d e) f A]{from=up}, to begin with.
`;

beforeAll(async () => {
  const root = join(folder, 'book');
  mkdirSync(join(root, 'lessons'), { recursive: true });
  writeFileSync(join(root, 'bowbook.yaml'), 'title: Ears\nteacher: Wenna Harkle\npdf: none\n');
  writeFileSync(join(root, 'lessons/2026-11-03-by-ear.md'), lesson);
  const out = join(folder, 'site');
  const built = await buildSite({ root, out, isPrivate: false, progress: () => {} });
  expect(built.failed).toBe(false);
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({ offline: true, ...options });
  const page = await context.newPage();
  await page.goto(address);
  if (options.javaScriptEnabled !== false) await awake(page);
  return page;
}

describe('a tune by ear first', () => {
  it('hides the notation until it is asked for, and stands whole without script', async () => {
    const page = await open({ javaScriptEnabled: false });
    const ear = page.locator('.tune').first();
    expect(await ear.locator('.by-ear').isVisible()).toBe(true);
    expect(await ear.locator('.notation').isVisible()).toBe(false);
    await ear.getByText('Show the notation').click();
    expect(await ear.locator('.notation').isVisible()).toBe(true);
    await page.context().close();
  });

  it('says letter, finger, string and stroke of every note, phrase by phrase', async () => {
    const page = await open();
    const shown = await page.evaluate(() =>
      [...document.querySelectorAll('.by-ear')].map(tune =>
        [...tune.querySelectorAll('.ear-phrases > li')].map(li => ({
          label: li.querySelector('.ear-label')?.textContent,
          strokes: [...li.querySelectorAll<HTMLElement>('.ear-stroke')].map(
            s =>
              `${s.dataset.direction}: ${[...s.querySelectorAll('.ear-note')]
                .map(n => [...n.children].map(c => c.textContent).join(' '))
                .join(', ')}`,
          ),
        })),
      ),
    );
    // Strings and fingers by letter, as every beginner's chart of the first position has them.
    expect(shown[0]?.[0]?.strokes).toEqual([
      'up: A 0 A',
      'down: D 3 A, E 0 E',
      'up: F♯ 1 E',
      'down: D 3 A',
      'up: B 1 A',
      'down: A 0 A',
      'up: B 1 A',
      'down: D 3 A',
    ]);
    expect(shown[0]?.[1]?.strokes).toEqual([
      'up: F♯ 1 E',
      'down: E 0 E',
      'up: D 3 A, D A 0 D 0 A',
      'down: F♯ 2 D',
      'up: G♯ 1 G',
      'down: D 0 D',
      'up: D 0 D',
    ]);
    expect(shown[1]).toHaveLength(1);
    await page.context().close();
  });

  it('is large print: letters and fingers of 16 points and more, on screen and on paper', async () => {
    // 16 points at least for large print, 14 for clear print: UKAAF, clear and large print guidelines.
    const page = await open({ viewport: { width: 360, height: 740 } });
    const points = (which: string) =>
      page.evaluate(
        w =>
          [...document.querySelectorAll(w)].map(
            e => Math.round((Number.parseFloat(getComputedStyle(e).fontSize) * 720) / 96) / 10,
          ),
        which,
      );
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media });
      const large = await points('.ear-note b, .ear-note small');
      expect(large.length).toBeGreaterThan(20);
      expect(Math.min(...large)).toBeGreaterThanOrEqual(16);
    }
    await page.emulateMedia({ media: 'screen' });
    expect(Math.min(...(await points('.chain b')))).toBeGreaterThanOrEqual(16);
    expect(Math.min(...(await points('.chain small')))).toBeGreaterThanOrEqual(14);
    await openAwake(page, address.replace(/lessons\/.*/, 'tunes/rope.html'));
    expect(Math.min(...(await points('.said b')))).toBeGreaterThanOrEqual(16);
    expect(Math.min(...(await points('.said')))).toBeGreaterThanOrEqual(14);
    await page.context().close();
  });

  it('fits a narrow screen, with text twice as large too, and its chain lies in the text', async () => {
    const page = await open({ viewport: { width: 320, height: 740 } });
    const over = () =>
      page.evaluate(() =>
        [...document.querySelectorAll('.by-ear, .by-ear :not(.unseen), .chain')]
          .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth)
          .map(e => e.textContent),
      );
    expect(await over()).toEqual([]);
    const inText = await page.evaluate(() => {
      const [chain, text] = [
        document.querySelector('.chain'),
        document.querySelector('.chain')?.closest('p'),
      ];
      const [a, b] = [chain?.getBoundingClientRect(), text?.getBoundingClientRect()];
      return a && b && a.left >= b.left && a.right <= b.right + 1 && a.bottom <= b.bottom + 1;
    });
    expect(inText).toBe(true);
    await page.setViewportSize({ width: 390, height: 740 });
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('html { font-size: 225% }');
      document.adoptedStyleSheets = [sheet];
    });
    expect(await over()).toEqual([]);
    await page.context().close();
  });

  it('has nothing that axe-core finds, in light, dark and forced colours', {
    tags: ['slow'],
  }, async () => {
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    for (const look of [
      { colorScheme: 'light' },
      { colorScheme: 'dark' },
      { forcedColors: 'active' },
    ] as const) {
      const page = await open({ ...look, bypassCSP: true });
      await page.addScriptTag({ content: axe });
      const found = await page.evaluate(async () => {
        const { run } = (
          globalThis as unknown as { axe: { run(c: string, o: object): Promise<AxeResults> } }
        ).axe;
        const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
        const result = await run('main', { runOnly: tags });
        return result.violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html}`));
      });
      expect(found).toEqual([]);
      await page.context().close();
    }
  });
});
