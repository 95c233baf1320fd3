import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { buildSite } from '../../src/build.ts';
import { startChromium } from './chromium.ts';

/** The demo book, built into a folder of its own, and a browser to open it in. */
export interface DemoSite {
  readonly browser: Browser;
  /** The pages, as paths from the site's folder. */
  readonly pages: readonly string[];
  readonly addressOf: (page: string) => string;
  /** Opens every page in turn, in one new context, and gathers what `look` finds on it. */
  readonly onEveryPage: (
    options: BrowserContextOptions,
    look: (page: Page) => Promise<readonly string[]>,
  ) => Promise<string[]>;
  readonly close: () => Promise<void>;
}

/** Builds the demo book and starts Chromium. Throws where the book has errors. */
export async function openDemoSite(): Promise<DemoSite> {
  const site = mkdtempSync(join(tmpdir(), 'bowbook-site-'));
  const root = join(import.meta.dirname, '../../content');
  const result = await buildSite({ root, out: site, isPrivate: false, progress: () => {} });
  if (result.failed) throw new Error('The demo book does not build.');
  const files = readdirSync(site, { recursive: true, encoding: 'utf8' });
  const pages = files.filter(p => p.endsWith('.html'));
  const browser = await startChromium();
  const addressOf = (page: string) => pathToFileURL(join(site, page)).href;

  const onEveryPage: DemoSite['onEveryPage'] = async (options, look) => {
    const context = await browser.newContext({ offline: true, ...options });
    const waiting = [...pages];
    const found: string[] = [];
    const visit = async () => {
      const page = await context.newPage();
      for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
        await page.goto(addressOf(path));
        found.push(...(await look(page)).map(what => `${path}: ${what}`));
      }
    };
    await Promise.all([visit(), visit()]);
    await context.close();
    return found.sort();
  };

  const close = async () => {
    await browser.close();
    rmSync(site, { recursive: true, force: true });
  };
  return { browser, pages, addressOf, onEveryPage, close };
}
