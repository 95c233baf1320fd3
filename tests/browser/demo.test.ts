import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtDemo } from './built-demo.ts';
import { startChromium } from './chromium.ts';
import { openAwake } from './open-awake.ts';

const root = join(import.meta.dirname, '../..');
const site = await builtDemo();
let browser: Browser;
let pages: string[];

beforeAll(async () => {
  pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter(p => p.endsWith('.html'));
  browser = await startChromium();
});

afterAll(() => browser?.close());

describe('the demo site, opened from its folder with no network', () => {
  it('has its pages', () => {
    expect(pages).toContain('index.html');
    expect(pages).toContain('how-to-read.html');
    expect(pages).toContain('404.html');
    expect(pages.filter(p => p.startsWith('lessons/')).length).toBeGreaterThanOrEqual(6);
    expect(pages.filter(p => p.startsWith('tunes/')).length).toBeGreaterThanOrEqual(11);
  });

  it('opens every page with no error and no request outside the folder', async () => {
    const context = await browser.newContext({ offline: true });
    const page = await context.newPage();
    const said: string[] = [];
    const asked: string[] = [];
    page.on('console', m => {
      if (['error', 'warning'].includes(m.type())) said.push(`${page.url()}: ${m.text()}`);
    });
    page.on('pageerror', e => said.push(`${page.url()}: ${e.message}`));
    page.on('requestfailed', r => {
      // What is still on its way when the page is left is stopped; what is missing says otherwise.
      const why = r.failure()?.errorText ?? '';
      if (why !== 'net::ERR_ABORTED') said.push(`failed: ${r.url()}: ${why}`);
    });
    page.on('request', r => asked.push(r.url()));
    for (const path of pages) await openAwake(page, pathToFileURL(join(site, path)).href);
    expect(said).toEqual([]);
    expect(asked.filter(url => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
    await context.close();
  });

  it('every link leads to a page, and every fragment to a place on it', {
    tags: ['slow'],
  }, async () => {
    const page = await browser.newPage();
    const wrong: string[] = [];
    const ids = new Map<string, Set<string>>();
    const links: { from: string; href: string }[] = [];
    for (const path of pages) {
      await openAwake(page, pathToFileURL(join(site, path)).href);
      const read = await page.evaluate(() => ({
        ids: [...document.querySelectorAll('[id]')].map(e => e.id),
        links: [...document.querySelectorAll<HTMLAnchorElement>('a[href]')].map(a => a.href),
      }));
      ids.set(join(site, path), new Set(read.ids));
      links.push(...read.links.map(href => ({ from: path, href })));
    }
    for (const { from, href } of links) {
      if (!href.startsWith('file:')) continue;
      const url = new URL(href);
      const target = fileURLToPath(new URL(url.pathname, 'file:'));
      const place = decodeURIComponent(url.hash.slice(1));
      const known = ids.get(target);
      if (known === undefined && !existsInSite(target)) wrong.push(`${from}: ${href}`);
      if (known !== undefined && place !== '' && !known.has(place)) wrong.push(`${from}: ${href}`);
    }
    expect(links.length).toBeGreaterThan(100);
    expect(wrong).toEqual([]);
    await page.close();
  });

  it('never scrolls sideways at 360, 768 and 1280 px', { tags: ['slow'] }, async () => {
    const page = await browser.newPage();
    const wide: string[] = [];
    for (const path of pages) {
      await openAwake(page, pathToFileURL(join(site, path)).href);
      for (const width of [360, 768, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        if (over > 0) wide.push(`${path} at ${width}: ${over} px`);
      }
    }
    expect(wide).toEqual([]);
    await page.close();
  });

  it('prints each tune on one page of A4 and of Letter', { tags: ['slow'] }, async () => {
    const page = await browser.newPage();
    const long: string[] = [];
    for (const path of pages.filter(p => p.startsWith('tunes/') && p !== 'tunes/index.html')) {
      await openAwake(page, pathToFileURL(join(site, path)).href);
      for (const format of ['A4', 'Letter']) {
        const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString('latin1');
        const count = [...pdf.matchAll(/\/Type\s*\/Page\b/g)].length;
        if (count !== 1) long.push(`${path} on ${format}: ${count} pages`);
      }
    }
    expect(long).toEqual([]);
    await page.close();
  });

  it('publishes none of the private notes', () => {
    const secrets = [join(root, 'content')].flatMap(folder =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter(p => p.endsWith('.md'))
        .flatMap(p => privateLines(readFileSync(join(folder, p), 'utf8'))),
    );
    expect(secrets.length).toBeGreaterThan(0);
    const published = readdirSync(site, { recursive: true, encoding: 'utf8' })
      .filter(p => /\.(html|json|js|txt)$/.test(p))
      .map(p => readFileSync(join(site, p), 'utf8'));
    const leaked = secrets.filter(s => published.some(text => text.includes(s)));
    expect(leaked).toEqual([]);
  });
});

const existsInSite = (path: string): boolean => {
  try {
    readFileSync(path);
    return true;
  } catch {
    return false;
  }
};

/** Words of private notes, three at a time, so that markup between lines does not hide them. */
function privateLines(markdown: string): string[] {
  const notes = markdown.matchAll(/^:::+private[^\n]*\n([\s\S]*?)^:::+\s*$/gm);
  return [...notes].flatMap(m =>
    (m[1] ?? '')
      .split('\n')
      .map(l => l.replace(/[*_`[\]()#-]/g, ' ').trim())
      .map(l => l.split(/\s+/).slice(0, 5).join(' '))
      .filter(l => l.length > 15),
  );
}
