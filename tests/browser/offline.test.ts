import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sirv from 'sirv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { startChromium } from './chromium.ts';
import { openAwake } from './open-awake.ts';

/**
 * The site over http, kept by its service worker. The server counts what is asked of it, can be
 * stopped, and can be made to fail half way through an update.
 */
interface TestServer {
  readonly address: string;
  readonly asked: string[];
  /** Answers this many requests more, then breaks every connection. */
  breakAfter: number;
  readonly stop: () => Promise<void>;
}

async function serve(folder: string, port = 0): Promise<TestServer> {
  const files = sirv(folder, { dev: true });
  const state: { asked: string[]; breakAfter: number } = { asked: [], breakAfter: Infinity };
  const server: Server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname);
    if (state.asked.length >= state.breakAfter) return void request.socket.destroy();
    state.asked.push(path.slice(1));
    files(request, response);
  });
  await new Promise<void>(done => server.listen(port, '127.0.0.1', done));
  const stop = () =>
    new Promise<void>(done => {
      server.close(() => done());
      server.closeAllConnections();
    });
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return Object.assign(state, { address, stop });
}

const work = mkdtempSync(join(tmpdir(), 'bowbook-offline-'));
const [book, site] = [join(work, 'book'), join(work, 'site')];
let browser: Browser;
let context: BrowserContext;
let server: TestServer;

const build = () => buildSite({ root: book, out: site, isPrivate: false, progress: () => {} });
const edit = (file: string, change: (text: string) => string) =>
  writeFileSync(join(book, file), change(readFileSync(join(book, file), 'utf8')));

/** Opens a page and waits until the worker answers for it. */
async function openKept(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(server.address + path);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return page;
}

beforeAll(async () => {
  cpSync(join(import.meta.dirname, '../../content'), book, { recursive: true });
  // Paper is not kept on a device, and takes time to make.
  edit('bowbook.yaml', text => `${text.replace(/^pdf:.*\n(?:[ -].*\n)*/m, '')}\npdf: none\n`);
  await build();
  browser = await startChromium();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(work, { recursive: true, force: true });
});

describe('a site that was visited once', () => {
  it('opens every page with the server stopped', { tags: ['slow'] }, async () => {
    server = await serve(site);
    context = await browser.newContext();
    await openKept('');
    const kept = Object.keys(
      JSON.parse(readFileSync(join(site, 'bowbook-manifest.json'), 'utf8')).files,
    );
    await server.stop();
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('console', message => {
      // Recordings are kept only where the student asks for them.
      const isRecording = message.location().url.endsWith('.mp3');
      if (message.type() === 'error' && !isRecording) faults.push(message.text());
    });
    for (const path of kept.filter(name => name.endsWith('.html'))) {
      await openAwake(page, server.address + path);
      const read = await page.locator('h1').first().textContent();
      if (read === '') faults.push(`${path}: empty`);
    }
    expect(faults).toEqual([]);
    await context.close();
  });

  it('plays a phrase and asks drills with the server stopped', async () => {
    server = await serve(site);
    context = await browser.newContext();
    await openKept('');
    await server.stop();
    const page = await context.newPage();
    await openAwake(page, `${server.address}tunes/wet-rope.html`);
    await page.locator('.stave').nth(1).click();
    await page.locator('.player').getByRole('button', { name: 'Play' }).click();
    await page.locator('.player[data-state="playing"]').waitFor();
    await page.keyboard.press('Escape');
    const drill = page.locator('.drill[data-drill="count"]');
    await page.locator('.drill-fold', { has: drill }).locator('summary').first().click();
    const asked = await drill.textContent();
    await drill.getByRole('button', { name: 'Another one' }).click();
    await expect.poll(() => drill.textContent()).not.toBe(asked);
    await context.close();
  });

  it('says so at the foot of the page', async () => {
    server = await serve(site);
    context = await browser.newContext();
    const page = await openKept('');
    const note = page.locator('[data-kept]');
    await note.getByText('opens without a network').waitFor();
    await context.close();
    await server.stop();
  });

  it('keeps the recordings where the student asks for them, and lets them go again', async () => {
    server = await serve(site);
    context = await browser.newContext();
    const page = await openKept('');
    const box = page.getByLabel('Keep the recordings too');
    await box.check();
    await page.waitForFunction(() => document.querySelector('[data-kept] input:checked') !== null);
    const heard = (address: string) =>
      page.evaluate(
        src =>
          new Promise<number>((resolve, reject) => {
            const sound = new Audio(src);
            sound.onloadedmetadata = () => resolve(sound.duration);
            sound.onerror = () => reject(new Error('not kept'));
          }),
        address,
      );
    const recording = `${server.address}media/stairs-first-part.mp3`;
    await expect
      .poll(() => heard(recording).catch(() => 0), { timeout: 10_000 })
      .toBeGreaterThan(10);
    await server.stop();
    await page.reload();
    expect(await heard(recording)).toBeGreaterThan(10);
    await page.getByLabel('Keep the recordings too').uncheck();
    await expect.poll(() => heard(`${recording}?again`).catch(() => 0)).toBe(0);
    await context.close();
  });

  it('fetches only what changed, and shows it when asked', { tags: ['slow'] }, async () => {
    server = await serve(site);
    context = await browser.newContext();
    const page = await openKept('');
    const changed = [
      'pages/about-the-class',
      'pages/between-tuesdays',
      'lessons/2026-10-06-wet-rope',
    ];
    for (const name of changed) edit(`${name}.md`, text => `${text}\nWe moved the chairs.\n`);
    await build();
    server.asked.length = 0;
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await page.locator('[data-newer] button').waitFor();
    const pages = server.asked.filter(path => path !== 'keep-site.js');
    expect(pages.toSorted()).toEqual(changed.map(name => `${name}.html`).toSorted());
    // Until then the old version stands.
    await page.goto(`${server.address}pages/about-the-class.html`);
    expect(await page.locator('main').textContent()).not.toContain('moved the chairs');
    await page.locator('[data-newer] button').click();
    await page.getByText('We moved the chairs.').waitFor();
    await context.close();
    await server.stop();
  });

  it('mixes nothing where an update is cut short', { tags: ['slow'] }, async () => {
    server = await serve(site);
    context = await browser.newContext();
    const page = await openKept('');
    const title = (text: string) => text.replace(/^title: .*$/m, 'title: Another Name Altogether');
    edit('bowbook.yaml', title); // every page changes
    await build();
    server.breakAfter = server.asked.length + 6;
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update().catch(() => {});
    });
    await page.waitForFunction(async () => {
      const registration = await navigator.serviceWorker.ready;
      return registration.installing === null;
    });
    await server.stop();
    const seen = new Set<string>();
    for (const path of ['index.html', 'tunes/index.html', 'tunes/wet-rope.html', '404.html']) {
      await page.goto(server.address + path);
      seen.add((await page.locator('.book-name').textContent()) ?? '');
    }
    expect([...seen]).toEqual(['Tuesday Fiddles at the Ice House']);
    await context.close();
  });
});
