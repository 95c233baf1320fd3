import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { unzipSync } from 'fflate';
import { JSDOM } from 'jsdom';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BuildResult, buildSite } from '../../src/incremental/open-builds.ts';
import { startChromium } from '../browser/chromium.ts';
import { openAwake } from '../browser/open-awake.ts';
import { poppler, popplerMissing } from '../print/poppler.ts';
import { type HostileBook, payloads, writeHostileBook } from './hostile-book.ts';

/**
 * A book in which every place that takes words tries to break out of it, built whole and opened in
 * a browser from its folder. A policy holds there (W3C, Content Security Policy Level 3), and it
 * must have nothing to hold: a breach of it is a failure too, since it says that something got through.
 */
let house: string;
let site: string;
let book: HostileBook;
let result: BuildResult;
let files: readonly string[];

beforeAll(async () => {
  house = mkdtempSync(join(tmpdir(), 'bowbook-hostile-'));
  site = join(house, 'site');
  book = writeHostileBook(join(house, 'book'));
  const root = join(house, 'book');
  result = await buildSite({ root, out: site, isPrivate: false, progress: () => {} });
  files = readdirSync(site, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry =>
      join(entry.parentPath, entry.name)
        .slice(site.length + 1)
        .replaceAll(sep, '/'),
    )
    .sort();
});
afterAll(() => rmSync(house, { recursive: true, force: true }));

const textOf = (path: string): string => readFileSync(join(site, path), 'utf8');
const ending = (...endings: readonly string[]): readonly string[] =>
  files.filter(path => endings.some(e => path.endsWith(e)));

describe('a hostile book', () => {
  it('is built whole, and holds what it tries', () => {
    expect(result.problems.filter(p => p.severity === 'error')).toEqual([]);
    expect(result.tunes.filter(t => t.isStudied)).toHaveLength(payloads.length);
    expect(book.injections).toBeGreaterThan(200);
    const rules = new Set(result.problems.map(p => p.rule));
    expect([...rules]).toEqual(expect.arrayContaining(['html-dropped', 'link-unsafe']));
    // Words that are shown must be there, as words: else nothing was tried.
    const page = new JSDOM(textOf('tunes/h0.html')).window.document.body.textContent ?? '';
    expect(page).toContain("<script>ran('title-0')</script>");
    expect(page).toContain("<script>ran('composer-0')</script>");
  });

  it('writes beside itself nothing but the site', () => {
    expect(readdirSync(house).sort()).toEqual(['book', 'site']);
    expect(readdirSync(join(house, 'book')).sort()).toEqual(
      ['bowbook.yaml', 'lessons', 'media', 'pages', 'tunes'].sort(),
    );
  });

  it('leaves nothing in its pages that could run, load or lead elsewhere', () => {
    const found = ending('.html').flatMap(path => {
      const { document } = new JSDOM(textOf(path)).window;
      return [...document.querySelectorAll('*')].flatMap(e =>
        faultsOf(e).map(f => `${path}: ${f}`),
      );
    });
    expect(found).toEqual([]);
  });

  it('leaves nothing in its drawings that could run', () => {
    const found = ending('.svg').flatMap(path => {
      const { document } = new JSDOM(textOf(path), { contentType: 'image/svg+xml' }).window;
      return [...document.querySelectorAll('*')].flatMap(e =>
        faultsOf(e).map(f => `${path}: ${f}`),
      );
    });
    expect(found).toEqual([]);
  });

  it('hands its data to its scripts as data alone', () => {
    const scripts = files.filter(path => /^tunes\/[^/]+\.js$/.test(path));
    expect(scripts.length).toBeGreaterThan(payloads.length);
    for (const path of scripts) {
      const calls: unknown[] = [];
      const receive = (data: unknown): void => void calls.push(data);
      const known = {
        bowbookTune: receive,
        bowbookEntries: receive,
        bowbookOpenings: receive,
        ran: (what: string) => expect.fail(`${path} ran ${what}`),
      };
      const context = createContext({ ...known });
      runInContext(textOf(path), context);
      expect(calls, path).toHaveLength(1);
      expect(Object.keys(context).sort(), path).toEqual(Object.keys(known).sort());
    }
  });

  it('writes feed, sitemap, manifest, JSON and MusicXML that read as what they are', () => {
    const documents = ending('.xml', '.musicxml');
    expect(documents.length).toBeGreaterThanOrEqual(payloads.length + 2);
    for (const path of documents) {
      // The parser throws where a document is not well formed.
      const { document } = new JSDOM(textOf(path), { contentType: 'application/xml' }).window;
      expect(document.querySelectorAll('script, iframe, svg, img, base, meta').length, path).toBe(
        0,
      );
      expect(textOf(path), path).not.toMatch(/<!ENTITY/i);
    }
    for (const path of ending('.json', '.webmanifest')) JSON.parse(textOf(path));
  });

  it('writes one tune into each download of ABC', () => {
    for (const path of files.filter(p => /^tunes\/h\d\.abc$/.test(p))) {
      expect(textOf(path).match(/^X:/gm), path).toHaveLength(1);
    }
  });

  it('packs a zip whose names stay inside it', () => {
    const [path = ''] = ending('.zip');
    const names = Object.keys(unzipSync(readFileSync(join(site, path))));
    expect(names.length).toBeGreaterThan(50);
    const out = names.filter(n => /^[/\\]|^[a-z]:|\\|(?:^|\/)\.\.?(?:\/|$)/i.test(n));
    expect(out).toEqual([]);
  });

  it('publishes nothing of private notes', () => {
    const told = files.filter(path => readFileSync(join(site, path)).includes('PRIVATE-SENTINEL'));
    expect(told).toEqual([]);
  });

  it.skipIf(popplerMissing !== null)('prints instructions as words', () => {
    const pdfs = ending('.pdf');
    expect(pdfs.length).toBeGreaterThan(payloads.length);
    const book = pdfs.find(path => !path.includes('/h')) ?? '';
    for (const path of [...pdfs.filter(p => p.includes('h8')), book]) {
      const pdf = readFileSync(join(site, path));
      expect(poppler('pdfinfo', pdf, ['-js']).trim(), path).toBe('');
      const text = poppler('pdftotext', pdf, [], ['-']);
      expect(text, path).not.toMatch(/root:.*:0:0/);
      expect(text.replace(/\s+/g, ''), path).toContain('#read("/etc/passwd")');
      const urls = poppler('pdfinfo', pdf, ['-url']);
      expect(urls, path).not.toMatch(/javascript:|data:|file:|evil\.example/i);
    }
  });
});

/** Elements that no page of ours has. */
/** Whatever a press or an address began has been handled and drawn. */
const twoFrames = () =>
  new Promise<void>(done => requestAnimationFrame(() => requestAnimationFrame(() => done())));

const foreign = new Set(
  'iframe object embed applet base form-associated frame frameset portal foreignObject animate set'.split(
    ' ',
  ),
);

/** What of an element could run, load from elsewhere, or lead where no link of ours leads. */
function faultsOf(element: Element): readonly string[] {
  const faults: string[] = [];
  const name = element.localName;
  if (foreign.has(name) || name === 'style') faults.push(`<${name}>`);
  if (name === 'script') {
    const src = element.getAttribute('src') ?? '';
    if (!/^(?:\.\.\/)?assets\/[a-z-]+\.js$/.test(src) || element.textContent !== '') {
      faults.push(`<script src="${src}">${element.textContent}`);
    }
  }
  if (name === 'meta' && /refresh/i.test(element.getAttribute('http-equiv') ?? '')) {
    faults.push('a page that turns to another');
  }
  for (const { name: attribute, value } of element.attributes) {
    if (/^on/i.test(attribute) || attribute === 'style' || attribute === 'srcdoc') {
      faults.push(`${attribute}="${value}" of <${name}>`);
    }
    if (!/^(?:href|src|xlink:href|action|formaction|poster|data)$/.test(attribute)) continue;
    const target = URL.parse(value, 'file:///site/tunes/page.html');
    const isLink = name === 'a' || (name === 'link' && element.getAttribute('rel') === 'canonical');
    const allowed = isLink ? ['file:', 'https:', 'http:', 'mailto:', 'tel:'] : ['file:'];
    if (target === null || !allowed.includes(target.protocol)) faults.push(`${attribute}=${value}`);
    // An address in the teacher's words may become a link; nothing but a link may lead out.
    else if (target.protocol === 'file:' && !target.pathname.startsWith('/site/')) {
      faults.push(`${attribute}=${value} leaves the site`);
    }
  }
  return faults;
}

describe('in a browser', () => {
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const seen: string[] = [];

  beforeAll(async () => {
    browser = await startChromium();
    context = await browser.newContext({ offline: true });
    await context.exposeFunction('tellRan', (what: string) => void seen.push(what));
    await context.addInitScript(() => {
      const tell = (window as unknown as { tellRan: (what: string) => void }).tellRan;
      Object.assign(window, { ran: (n: unknown) => tell(`ran ${n} on ${location.href}`) });
      document.addEventListener('securitypolicyviolation', event => {
        tell(`the policy stopped ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
      });
    });
    context.on('request', request => {
      const url = new URL(request.url());
      const inside = url.protocol === 'file:' && fileURLToPath(url).startsWith(site);
      if (!inside && url.protocol !== 'blob:') seen.push(`asked for ${url.href}`);
    });
    page = await context.newPage();
    page.on('dialog', dialog => {
      seen.push(`a dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('popup', other => seen.push(`another window: ${other.url()}`));
  });
  afterAll(() => browser.close());

  let opened = 0;
  /** Opens a page anew: an address that differs in its last part alone would not load it again. */
  const open = async (path: string, hash = ''): Promise<void> => {
    opened += 1;
    const address = pathToFileURL(join(site, path)).href;
    await openAwake(page, `${address}?${opened}${hash}`);
  };

  it('what runs, is stopped or asks for something is seen', async () => {
    const traps = join(house, 'traps');
    mkdirSync(traps);
    const policy = '<meta http-equiv="Content-Security-Policy" content="script-src \'none\'">';
    const pages = [
      "<script>ran('trap')</script>",
      "<img src=x onerror=ran('trap')>",
      `${policy}<script>ran('trap')</script>`,
      '<img src=https://evil.example/x>',
      '<script>alert(1)</script>',
    ];
    for (const [i, text] of pages.entries()) {
      writeFileSync(join(traps, `${i}.html`), text);
      seen.length = 0;
      await page.goto(pathToFileURL(join(traps, `${i}.html`)).href);
      const what = [/^ran trap/, /^ran trap/, /^the policy/, /^asked for https:/, /^a dialog/][i];
      await expect.poll(() => seen.filter(s => what?.test(s)).length).toBeGreaterThan(0);
    }
    seen.length = 0;
    rmSync(traps, { recursive: true });
  });

  it('nothing of any page runs or asks for anything, when opened, unfolded and pressed', {
    tags: ['slow'],
  }, async () => {
    const pages = ending('.html');
    expect(pages.length).toBeGreaterThan(3 * payloads.length);
    for (const path of pages) {
      await open(path);
      await page.evaluate(async () => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
        for (const item of document.querySelectorAll('[data-tune]')) item.scrollIntoView();
        for (const e of document.querySelectorAll<HTMLElement>('a, button, [tabindex]')) e.focus();
        for (const b of document.querySelectorAll<HTMLElement>('main button')) {
          if (!b.matches('[data-print]')) b.click();
        }
      });
      await page.evaluate(twoFrames);
    }
    expect(seen).toEqual([]);
  });

  it('nothing of an address runs', { tags: ['slow'] }, async () => {
    const [lesson = ''] = files.filter(path => /^lessons\/2026.*\.html$/.test(path));
    for (const [k, make] of payloads.entries()) {
      const asked = encodeURIComponent(make(`address-${k}`));
      await open('tunes/index.html', `#text=${asked}&type=${asked}&key=${asked}&form=${asked}`);
      await page.evaluate(twoFrames);
      for (const hash of [`#${asked}`, `#try=1.${asked}.a.A`, `#try=1.a0.${asked}.${asked}`]) {
        await open(lesson, hash);
      }
    }
    for (const hash of ['#%', '#try=%', '#try=999.x', '#__proto__', '#text=%E0%A4%A']) {
      await open('tunes/index.html', hash);
      await open(lesson, hash);
    }
    expect(seen).toEqual([]);
  });

  it('nothing of a file of reviews runs', async () => {
    const [review = ''] = files.filter(path => path.endsWith('review.html'));
    await open(review);
    for (const [k, make] of payloads.entries()) {
      const n = make(`review-${k}`);
      const tunes = { h0: { step: 1, last: '2026-09-10' }, [n]: { step: n, last: n } };
      for (const text of [
        n,
        JSON.stringify({ bowbookReview: 1, minutes: n, tunes }),
        `{"__proto__":{"ran":1}}`,
      ]) {
        const buffer = Buffer.from(text);
        const file = { name: `${k}.json`, mimeType: 'application/json', buffer };
        await page.locator('input[type=file]').setInputFiles(file);
        await page.locator('[data-file-said]:not(:empty)').waitFor();
      }
    }
    expect(seen).toEqual([]);
  });
});
