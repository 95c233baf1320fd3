import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/build.ts';
import { startChromium } from './chromium.ts';

// Rules are those of WCAG 2.2, levels A and AA, as axe-core checks them; a success criterion that
// a test of ours measures itself is named beside it.

const root = join(import.meta.dirname, '../..');
const site = mkdtempSync(join(tmpdir(), 'bowbook-access-'));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let browser: Browser;
let pages: string[];

beforeAll(async () => {
  const options = { root: join(root, 'content'), out: site, isPrivate: false, progress: () => {} };
  const result = await buildSite(options);
  expect(result.failed).toBe(false);
  pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter(p => p.endsWith('.html'));
  expect(pages.length).toBeGreaterThan(15);
  browser = await startChromium();
});

afterAll(async () => {
  await browser?.close();
  rmSync(site, { recursive: true, force: true });
});

/** Opens every page in turn in a context of its own and gathers what `look` finds on it. */
async function onEveryPage(
  options: BrowserContextOptions,
  look: (page: Page) => Promise<readonly string[]>,
): Promise<string[]> {
  const context = await browser.newContext({ offline: true, ...options });
  const waiting = [...pages];
  const found: string[] = [];
  const visit = async () => {
    const page = await context.newPage();
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      await page.goto(pathToFileURL(join(site, path)).href);
      found.push(...(await look(page)).map(what => `${path}: ${what}`));
    }
  };
  await Promise.all([visit(), visit()]);
  await context.close();
  return found.sort();
}

/** What axe-core finds wrong on a page: the rule, the place, and what it says of it. */
async function violations(page: Page): Promise<string[]> {
  // What is folded away would not be looked at.
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
  await page.addScriptTag({ content: axe });
  const options: RunOptions = {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    rules: { 'target-size': { enabled: true } },
    resultTypes: ['violations'],
  };
  const result = await page.evaluate(
    o => (globalThis as unknown as { axe: { run(o: RunOptions): Promise<AxeResults> } }).axe.run(o),
    options,
  );
  return result.violations.flatMap(v =>
    v.nodes.map(n => `${v.id} at ${n.target.join(' ')}: ${n.failureSummary?.replace(/\s+/g, ' ')}`),
  );
}

describe('axe-core finds nothing against WCAG 2.2 AA', () => {
  it.each([
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['forced colours', { forcedColors: 'active' }],
  ] as const)('in %s', async (_, looks) => {
    // The pages' own policy lets no script in but theirs: for axe-core alone it is set aside.
    expect(await onEveryPage({ bypassCSP: true, ...looks }, violations)).toEqual([]);
  });
});
