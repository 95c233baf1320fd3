import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { builtDemo } from './built-demo.ts';
import { startChromium } from './chromium.ts';
import { openAwake } from './open-awake.ts';

/** The demo book, built, and a browser to open it in. */
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

/** Opens the demo book in Chromium. Throws where the book does not build. */
export async function openDemoSite(): Promise<DemoSite> {
  const site = await builtDemo();
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
        await openAwake(page, addressOf(path));
        found.push(...(await look(page)).map(what => `${path}: ${what}`));
      }
    };
    await Promise.all([visit(), visit()]);
    await context.close();
    return found.sort();
  };

  const close = () => browser.close();
  return { browser, pages, addressOf, onEveryPage, close };
}
