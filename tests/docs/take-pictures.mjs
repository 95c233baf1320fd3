// `node tests/docs/take-pictures.mjs SITE`: takes the pictures of README and docs anew from a built
// demo site (`npm run build` makes one in site/), in the browser of the tests. ImageMagick's
// `convert` and poppler's `pdftoppm` make them small; both have to be there.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = join(import.meta.dirname, '../..');
const site = resolve(process.argv[2] ?? join(root, 'site'));
const pictures = join(root, 'docs/pictures');
const work = mkdtempSync(join(tmpdir(), 'bowbook-pictures-'));
mkdirSync(pictures, { recursive: true });

const browser = await chromium.launch({
  executablePath: process.env.BOWBOOK_CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});

/** Few colours, no date, no camera: the same page gives the same file. */
function shrink(from, to, ...steps) {
  const small = ['-colors', '64', '+dither', '-strip', '-define', 'png:exclude-chunks=date,time'];
  execFileSync('convert', [from, ...steps, ...small, `PNG8:${to}`]);
}

const address = path => pathToFileURL(join(site, path)).href;

/** Opens a page of the site, lets `show` bring it to what is to be seen, and takes it. */
async function take(name, url, { width, height, scale = 1 }, show) {
  const viewport = { width, height };
  const context = await browser.newContext({ viewport, deviceScaleFactor: scale });
  const page = await context.newPage();
  await page.goto(url);
  await page.evaluate(() => document.fonts.ready);
  const part = await show?.(page);
  const raw = join(work, 'raw.png');
  const { x, y, ...size } = (await part?.boundingBox()) ?? { x: 0, y: 0, ...viewport };
  const clip = { x: x - 14, y: y - 14, width: size.width + 28, height: size.height + 28 };
  await page.screenshot({ path: raw, ...(part ? { clip } : {}) });
  shrink(
    raw,
    name === 'tune-page' ? join(root, 'docs/tune-page.png') : join(pictures, `${name}.png`),
  );
  await context.close();
}

const phone = { width: 390, height: 760, scale: 1.25 };

const firstTry = address('lessons/2026-09-22-three-in-a-bow.html');
const weighbridge = address('tunes/left-at-the-weighbridge.html');

/** Scrolls so that a thing stands at the top of the window, a little below its edge. */
const bringUp = (page, selector) =>
  page
    .locator(selector)
    .first()
    .evaluate(e => {
      scrollTo(0, e.getBoundingClientRect().top + scrollY - 16);
    });

await take('tune-page', weighbridge, { width: 1000, height: 1830 });
await take('lesson', firstTry, phone, page => bringUp(page, '#at-what-we-agreed'));
await take('plan', firstTry, { width: 760, height: 620 }, page =>
  bringUp(page, '#plan-fish-hill-first-try'),
);
await take('try', weighbridge, { width: 800, height: 2000 }, async page => {
  const place = page.locator('details.try').first();
  await place.locator('summary').first().click();
  await place.locator('.try-room button').first().waitFor();
  // The last slur on the way, parted: the bow now arrives the wrong way.
  await place.locator('.bead-link').last().click();
  await bringUp(page, 'details.try');
  return place;
});
await take(
  'drill',
  address('lessons/2026-09-29-two-and-one.html'),
  { width: 760, height: 1200 },
  async page => {
    const drill = page.locator('.drill').first();
    await drill.scrollIntoViewIfNeeded();
    await drill.locator('button').first().waitFor();
    await bringUp(page, '.drill');
    return drill;
  },
);
await take('player', weighbridge, { width: 760, height: 960 }, async page => {
  await page.locator('.player-panel summary').first().click();
  await bringUp(page, '.player-bar');
});
await take('what-we-play', address('tunes/index.html'), { width: 900, height: 760 }, async page => {
  await page.locator('#finder-text').fill('weigh');
  await page.locator('[data-found] li').first().waitFor();
});

// A book just begun, with one letter wrong, as its teacher sees it.
const book = join(work, 'book');
const command = join(root, 'dist/cli.js');
const answers = ['--title', 'Thursday fiddles', '--date', '2026-09-17'];
execFileSync(process.execPath, [command, 'begin', book, ...answers]);
const lesson = join(book, 'lessons/2026-09-17-first-evening.md');
const written = readFileSync(lesson, 'utf8');
const preview = spawn(process.execPath, [
  ...[command, 'preview', book, '--no-open', '--cache', join(work, 'cache')],
]);
try {
  const url = await new Promise((found, lost) => {
    preview.stdout.on('data', text => {
      const at = /http:\/\/\S+/.exec(String(text));
      if (at) found(at[0].replace(/\/?$/, '/'));
    });
    preview.on('exit', () => lost(new Error('the preview ended')));
  });
  const page = 'lessons/2026-09-17-first-evening.html';
  await take('preview', url + page, { width: 900, height: 720 }, async shown => {
    writeFileSync(lesson, written.replace('start=down', 'strat=down'));
    await shown.getByText('attribute-unknown').first().waitFor({ timeout: 60_000 });
  });
} finally {
  preview.kill('SIGINT');
}

// The first three of the fading sheets, beside one another.
const sheet = join(work, 'sheet');
const pdf = join(site, 'tunes/left-at-the-weighbridge-sheets.pdf');
execFileSync('pdftoppm', ['-r', '60', '-png', '-f', '1', '-l', '3', pdf, sheet]);
execFileSync('convert', [
  ...[1, 2, 3].map(n => `${sheet}-${n}.png`),
  ...['-bordercolor', '#888888', '-border', '1', '-bordercolor', '#e4e0d6', '-border', '12'],
  ...['+append', join(work, 'sheets.png')],
]);
shrink(join(work, 'sheets.png'), join(pictures, 'sheets.png'));

await browser.close();
rmSync(work, { recursive: true, force: true });
