import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openAwake } from './open-awake.ts';

let site: DemoSite;

beforeAll(async () => {
  site = await openDemoSite();
}, 120_000);
afterAll(() => site?.close());

async function openTunes(hash = ''): Promise<{ page: Page; faults: string[] }> {
  const context = await site.browser.newContext({ offline: true, hasTouch: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', message => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('pageerror', error => faults.push(error.message));
  await openAwake(page, site.addressOf('tunes/index.html') + hash);
  return { page, faults };
}

const found = (page: Page) => page.locator('[data-found] h2').allTextContents();

describe('finding a tune, from a folder', () => {
  it('answers as one types, and brings the whole list back', async () => {
    const { page, faults } = await openTunes();
    await page.getByLabel('Find a tune').pressSequentially('herr');
    await page.getByText(/^1 of \d+ tunes\.$/).waitFor();
    expect(await found(page)).toEqual(['A Herring for the Cat']);
    await page.getByLabel('Find a tune').fill('');
    await page.locator('[data-all]').waitFor();
    expect(await page.locator('[data-found]').isVisible()).toBe(false);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('combines filters with words', async () => {
    const { page, faults } = await openTunes();
    await page.getByLabel('Type').selectOption('reel');
    await page.getByLabel('Key').selectOption('E dorian');
    await page.getByText(/^1 of \d+ tunes\.$/).waitFor();
    expect(await found(page)).toEqual(['Wet Rope']);
    await page.getByLabel('Find a tune').fill('ferry');
    await page.getByText('No tune fits.').waitFor();
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('finds an opening touched on the strings, and takes a slip back', async () => {
    const { page, faults } = await openTunes();
    await page.getByText('Play its first notes').tap();
    for (const name of ['1 on D, E', '1 on D, E', '1 on D, E', '4 on A, E']) {
      await page.getByRole('button', { name, exact: true }).tap();
    }
    await page.getByRole('button', { name: 'Take the last one back' }).tap();
    await page.getByRole('button', { name: '3 on D, G', exact: true }).tap();
    await page.getByRole('button', { name: '1 on A, B', exact: true }).tap();
    expect(await page.locator('[data-touched]').textContent()).toBe('E E E G B');
    expect((await found(page))[0]).toBe('Wet Rope');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('draws the openings, and finds the same again from its address', async () => {
    const { page, faults } = await openTunes('#text=tide');
    await page.locator('[data-found] .opening-staff svg').first().waitFor();
    expect(await found(page)).toContain('The Tide Table');
    const glyphs = await page
      .locator('[data-found] use')
      .evaluateAll(
        uses =>
          uses.filter(use => !document.getElementById((use.getAttribute('href') ?? '').slice(1)))
            .length,
      );
    expect(glyphs).toBe(0);
    await page.getByRole('link', { name: 'The Tide Table', exact: true }).click();
    await page.goBack();
    await page.locator('[data-found] h2').first().waitFor();
    expect(await page.getByLabel('Find a tune').inputValue()).toBe('tide');
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
