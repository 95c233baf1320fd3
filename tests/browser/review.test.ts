import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { startChromium } from './chromium.ts';
import { awake, openAwake } from './open-awake.ts';

/**
 * A book of four short reels, in lessons of three Tuesdays and of none, opened from its folder on
 * days that the browser is told. Each tune needs two turns of a minute and one through the whole.
 */
const folder = mkdtempSync(join(tmpdir(), 'bowbook-review-'));
const site = join(folder, 'site');
let browser: Browser;

const reel = (title: string): string =>
  `\`\`\`abc\nX:1\nT:${title}\nR:reel\nM:4/4\nL:1/8\nK:D\n|:DFAd BAFA|GEFD EFGA:|\n|:dfaf gece|dBAF GEFD:|\n\`\`\`\n`;

const files: Readonly<Record<string, string>> = {
  'bowbook.yaml': 'title: Review\nrights: own\npdf: none\n',
  'lessons/2026-11-10-first.md': `# First\n\n${reel('Salt Marsh')}`,
  'lessons/2026-11-17-second.md': `# Second\n\n${reel('Wet Sand')}\n\n::tune{of=salt-marsh}\n`,
  'lessons/2026-11-24-third.md': `# Third\n\n${reel('Cold Harbour')}`,
  'tunes/a.md': reel('Last Light'),
};

beforeAll(async () => {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, 'book', name, '..'), { recursive: true });
    writeFileSync(join(folder, 'book', name), text);
  }
  const root = join(folder, 'book');
  const result = await buildSite({ root, out: site, isPrivate: false, progress: () => {} });
  expect(result.problems.filter(p => p.severity === 'error')).toEqual([]);
  browser = await startChromium();
});

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const address = pathToFileURL(join(site, 'review.html')).href;

/** The page on a day, in a browser that has never seen it unless `page` is one that has. */
async function openOn(moment: string, page?: Page, zone = 'Europe/London'): Promise<Page> {
  const opened =
    page ?? (await (await browser.newContext({ offline: true, timezoneId: zone })).newPage());
  if (page) await page.clock.setFixedTime(new Date(moment));
  else await opened.clock.install({ time: new Date(moment) });
  await openAwake(opened, address);
  return opened;
}

const ticks = (page: Page) => page.locator('.ticks .name').allTextContents();
const said = (page: Page) => page.locator('[data-said]').textContent();

describe('what to play today, from a folder with no network', () => {
  it('says what is due by the lessons, the longest overdue first', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    expect(await page.locator('[data-today]').textContent()).toContain('25 November');
    // Salt Marsh was last in the lesson of the 17th, as Wet Sand was; Cold Harbour on the 24th.
    expect((await ticks(page)).slice().sort()).toEqual(['Cold Harbour', 'Salt Marsh', 'Wet Sand']);
    expect((await ticks(page)).at(-1)).toBe('Cold Harbour');
    await page.context().close();
  });

  it('puts a tune off when it was there, and brings it back sooner when it had gone', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'It was there: Cold Harbour' }).click();
    expect(await said(page)).toContain('in 3 days, on Saturday 28 November');
    await page.getByRole('button', { name: 'It had gone: Wet Sand' }).click();
    expect(await said(page)).toContain('tomorrow, on Thursday 26 November');
    expect(await ticks(page)).toEqual(['Salt Marsh']);

    await openOn('2026-11-26T10:00:00Z', page);
    expect((await ticks(page)).slice().sort()).toEqual(['Salt Marsh', 'Wet Sand']);
    await openOn('2026-11-28T10:00:00Z', page);
    expect((await ticks(page)).slice().sort()).toEqual(['Cold Harbour', 'Salt Marsh', 'Wet Sand']);
    await page.context().close();
  });

  it('takes the last tick back', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    const before = await ticks(page);
    await page.getByRole('button', { name: 'It was there: Cold Harbour' }).click();
    await page.getByRole('button', { name: 'Take the last tick back' }).click();
    expect(await ticks(page)).toEqual(before);
    await page.reload();
    await awake(page);
    expect(await ticks(page)).toEqual(before);
    await page.context().close();
  });

  it('is worked by the keyboard alone, and the focus is never lost', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'It was there: Wet Sand' }).focus();
    for (let left = 3; left > 0; left--) {
      await page.keyboard.press('Enter');
      expect(await ticks(page)).toHaveLength(left - 1);
      const on = await page.evaluate(() => document.activeElement?.textContent ?? '');
      expect(on).toBe(left > 1 ? 'It was there' : await page.locator('[data-today]').textContent());
    }
    expect(await page.locator('[data-idle]').textContent()).toContain('all for today');
    await page.context().close();
  });

  it('keeps to the minutes, and says what waits', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByLabel('Minutes today').fill('5');
    await page.getByLabel('Minutes today').press('Tab');
    expect(await ticks(page)).toHaveLength(1);
    expect(await page.locator('[data-waiting]').textContent()).toContain('2 more tunes are due');
    await page.reload();
    await awake(page);
    expect(await page.getByLabel('Minutes today').inputValue()).toBe('5');
    await page.context().close();
  });

  it('begins with a tune that no lesson has', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'Begin with this one: Last Light' }).click();
    expect(
      await page.getByRole('button', { name: 'Begin with this one: Last Light' }).isVisible(),
    ).toBe(false);
    await openOn('2026-11-26T10:00:00Z', page);
    expect(await ticks(page)).toContain('Last Light');
    await page.context().close();
  });

  it('goes by the calendar of the place', async () => {
    const moment = '2026-11-24T12:30:00Z';
    const london = await openOn(moment);
    // The lesson of the 24th is not a day old there; in Auckland it is the 25th already.
    expect(await ticks(london)).not.toContain('Cold Harbour');
    const auckland = await openOn(moment, undefined, 'Pacific/Auckland');
    expect(await ticks(auckland)).toContain('Cold Harbour');
    await london.context().close();
    await auckland.context().close();
  });

  it('plans four weeks, a row a day, and prints nothing else', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    expect(await page.locator('.week tbody tr').count()).toBe(28);
    const first = page.locator('.week tbody tr').first();
    expect(await first.locator('.box').allTextContents()).toEqual(await ticks(page));
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.week').first().isVisible()).toBe(true);
    for (const hidden of ['[data-turns]', '[data-ticks]', '.review-keep', '.review-known']) {
      expect([hidden, await page.locator(hidden).isVisible()]).toEqual([hidden, false]);
    }
    await page.context().close();
  });
});

describe('the file of ticks', () => {
  it('goes from one device to another', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'It was there: Cold Harbour' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const file = join(folder, 'ticks.json');
    await download.saveAs(file);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual({
      bowbookReview: 1,
      minutes: 20,
      tunes: { 'cold-harbour': { step: 1, last: '2026-11-25' } },
    });

    const other = await openOn('2026-11-25T12:00:00Z');
    expect(await ticks(other)).toContain('Cold Harbour');
    await other.locator('[data-load]').setInputFiles(file);
    await other.getByText('Taken over: 1 tune.').waitFor();
    expect(await ticks(other)).not.toContain('Cold Harbour');
    await other.reload();
    await awake(other);
    expect(await ticks(other)).not.toContain('Cold Harbour');
    await page.context().close();
    await other.context().close();
  });

  it('that is none changes nothing, and says why', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'It was there: Wet Sand' }).click();
    const before = [await ticks(page), await page.evaluate(() => JSON.stringify(localStorage))];
    for (const [text, why] of [
      ['{"bowbookReview":1,"tunes":{"wet-', 'cut short'],
      ['{"name":"something else"}', 'not saved from such a page'],
      ['{"bowbookReview":1,"tunes":{"wet-sand":{"step":9,"last":"2026-11-25"}}}', 'makes no sense'],
      ['{"bowbookReview":1,"tunes":{"wet-sand":{"step":1,"last":"2031-01-01"}}}', 'not come yet'],
      ['{"bowbookReview":9,"tunes":{}}', 'later Bowbook'],
    ] as const) {
      const file = { name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(text) };
      await page.locator('[data-load]').setInputFiles(file);
      await page.locator('[data-file-said]', { hasText: why }).waitFor();
      expect(await page.locator('[data-file-said]').textContent()).toContain('Nothing is changed');
      const now = [await ticks(page), await page.evaluate(() => JSON.stringify(localStorage))];
      expect([why, now]).toEqual([why, before]);
    }
    await page.context().close();
  });

  it('forgets only when asked twice', async () => {
    const page = await openOn('2026-11-25T10:00:00Z');
    await page.getByRole('button', { name: 'It was there: Wet Sand' }).click();
    await page.getByRole('button', { name: 'Forget all ticks' }).click();
    expect(await ticks(page)).not.toContain('Wet Sand');
    await page.getByRole('button', { name: 'Really forget' }).click();
    expect(await ticks(page)).toContain('Wet Sand');
    await page.context().close();
  });
});

describe('the page itself', () => {
  it('says without script what it would do, and lists the tunes by lesson', async () => {
    const context = await browser.newContext({ offline: true, javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(address);
    expect(await page.getByText('With scripts allowed, this page says').isVisible()).toBe(true);
    expect(await page.locator('[data-review]').isVisible()).toBe(false);
    const heads = await page.locator('.review-lessons h3 a').allTextContents();
    expect(heads).toEqual(['Third', 'Second', 'First']);
    expect(await page.getByRole('link', { name: /Last Light/ }).isVisible()).toBe(true);
    await context.close();
  });

  it('goes on where the browser keeps nothing, and says so', async () => {
    const context = await browser.newContext({ offline: true });
    await context.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get() {
          throw new DOMException('refused', 'SecurityError');
        },
      });
    });
    const page = await context.newPage();
    await page.clock.install({ time: new Date('2026-11-25T10:00:00Z') });
    await openAwake(page, address);
    await page.getByRole('button', { name: 'It was there: Wet Sand' }).click();
    expect(await ticks(page)).not.toContain('Wet Sand');
    expect(await page.getByText('This browser keeps nothing').isVisible()).toBe(true);
    await context.close();
  });

  it('asks no other place for anything, and works at 320 pixels', async () => {
    const context = await browser.newContext({ viewport: { width: 320, height: 640 } });
    const page = await context.newPage();
    const asked: string[] = [];
    page.on('request', request => asked.push(request.url()));
    await openAwake(page, address);
    expect(asked.filter(url => !/^(?:file|data):/.test(url))).toEqual([]);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(320);
    const small = await page
      .locator('.review-button:visible')
      .evaluateAll(buttons =>
        buttons.filter(b => b.getBoundingClientRect().height < 44).map(b => b.textContent),
      );
    expect(small).toEqual([]);
    await context.close();
  });
});
