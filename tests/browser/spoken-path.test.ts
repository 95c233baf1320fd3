import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openAwake } from './open-awake.ts';

/**
 * The main path as a screen reader has it: from the front page to hearing today's tune, by the roles,
 * names and states of the browser's accessibility tree, as WAI-ARIA 1.2 defines them.
 */
let site: DemoSite;
beforeAll(async () => {
  site = await openDemoSite();
});
afterAll(() => site?.close());

const open = async (path: string): Promise<Page> => {
  const page = await site.browser.newPage();
  await openAwake(page, site.addressOf(path));
  return page;
};

describe('by the accessibility tree alone', () => {
  it('the front page leads to hearing the newest tune in two steps', async () => {
    const page = await open('index.html');
    for (const landmark of ['banner', 'main', 'contentinfo'] as const) {
      expect(await page.getByRole(landmark).count()).toBe(1);
    }
    await page.getByRole('navigation', { name: 'This book' }).waitFor();
    await page.getByRole('link', { name: 'Hear the tune' }).press('Enter');
    const player = page.getByRole('form', { name: /^Listen to/ }).first();
    await player.getByRole('button', { name: 'Play' }).press('Enter');
    await page.locator('.player[data-state="playing"]').first().waitFor();
    await player.getByRole('button', { name: 'Stop' }).press('Enter');
    await player.getByRole('button', { name: 'Play' }).waitFor();
    await page.close();
  });

  it('a tune is told by part, phrase and bar', async () => {
    const page = await open('tunes/wet-rope.html');
    await page.getByRole('heading', { name: 'Note by note, in words' }).waitFor();
    const tree = await page.locator('.notation-section').ariaSnapshot();
    expect(tree).toMatch(/group "Part A/);
    expect(tree).toMatch(/group "Phrase a, bars A1 to A2"/);
    expect(tree).toMatch(/listitem: "Bar A1\. Down: E/);
    await page.close();
  });

  it('strokes can be tried, and what comes of it is said', async () => {
    const page = await open('tunes/the-tide-table.html');
    const fold = page.locator('details', { hasText: 'Try your own strokes' }).last();
    await fold.locator('summary').first().press('Enter');
    const link = page.getByRole('button', { name: /slur|share|apart|stroke/i }).first();
    await link.waitFor();
    const said = page.getByRole('status').filter({ hasText: /The bow arrives/ });
    await said.first().waitFor();
    await page.close();
  });
});
