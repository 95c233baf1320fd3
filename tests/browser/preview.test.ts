import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openPreview, type Preview } from '../../src/preview/open-preview.ts';
import { lessonText, previewFolder, writeSmallBook } from '../preview/small-book.ts';
import { startChromium } from './chromium.ts';

const root = writeSmallBook();
const folder = previewFolder();
const lesson = join(root, 'lessons/2026-09-15-first-evening.md');
const tune = join(root, 'tunes/kettle-on-the-sill.md');
const tuneAsWritten = readFileSync(tune, 'utf8');
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const paragraphs = Array.from({ length: 60 }, (_, i) => `Paragraph ${i + 1}.`);
const longLesson = (first: string): string =>
  lessonText([first, ...paragraphs, 'The last word.'].join('\n\n'));

let browser: Browser;
let preview: Preview;
let context: BrowserContext;
let page: Page;
let amiss: string[];
let turns = 0;

beforeAll(async () => {
  writeFileSync(lesson, longLesson('As it was.'));
  preview = await openPreview({
    root,
    folder,
    port: 0,
    progress: () => {},
    onBuild: () => {
      turns++;
    },
    onDefect: error => {
      throw error;
    },
  });
  await preview.firstBuild;
  browser = await startChromium();
});

afterAll(async () => {
  await browser.close();
  await preview.close();
  for (const made of [root, folder]) rmSync(made, { recursive: true, force: true });
});

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 900, height: 700 } });
  page = await context.newPage();
  amiss = [];
  page.on('console', message => {
    if (message.type() === 'error') amiss.push(message.text());
  });
  page.on('pageerror', error => amiss.push(error.message));
});

afterEach(async () => {
  await context.close();
  expect(amiss).toEqual([]);
});

const open = async (path: string): Promise<void> => {
  await page.goto(preview.address + path);
  await page.getByText('nothing wrong').waitFor();
  await page.evaluate(() => Object.assign(globalThis, { isSamePage: true }));
};
const isSamePage = (): Promise<boolean> =>
  page.evaluate(() => (globalThis as { isSamePage?: boolean }).isSamePage ?? false);
const scrolled = (): Promise<number> => page.evaluate(() => Math.round(scrollY));
const panel = () => page.getByRole('complementary', { name: 'Preview' });

describe('a page in the preview', () => {
  it('follows a change of its prose in place: nothing is loaded anew and nothing jumps', async () => {
    await open('lessons/2026-09-15-first-evening.html');
    await page.evaluate(() => scrollTo(0, 900));
    const before = await page.getByText('Paragraph 30.').boundingBox();
    writeFileSync(lesson, longLesson('As it is now.').replace('First evening', 'One evening'));
    await page.getByText('As it is now.').waitFor({ state: 'attached' });
    expect(await page.title()).toContain('One evening');
    expect(await page.getByRole('heading', { name: 'One evening' }).count()).toBe(1);
    expect(await page.getByText('As it was.').count()).toBe(0);
    expect(await isSamePage()).toBe(true);
    expect(await scrolled()).toBe(900);
    expect((await page.getByText('Paragraph 30.').boundingBox())?.y).toBe(before?.y);
    // Once more, from the page as it has been changed; a paragraph comes, another goes.
    writeFileSync(lesson, longLesson('And now.').replace('Paragraph 31.\n\n', ''));
    await page.getByText('Paragraph 31.').waitFor({ state: 'detached' });
    await page.getByText('And now.').waitFor({ state: 'attached' });
    expect(await isSamePage()).toBe(true);
    expect(await scrolled()).toBe(900);
  });

  it('keeps what its scripts have opened: a tune plays on while the prose changes', async () => {
    await open('lessons/2026-09-15-first-evening.html');
    const options = page.locator('.player-panel').first();
    await options.locator('summary').click();
    writeFileSync(lesson, longLesson('While it plays.'));
    await page.getByText('While it plays.').waitFor({ state: 'attached' });
    expect(await isSamePage()).toBe(true);
    expect(await options.evaluate(e => (e as HTMLDetailsElement).open)).toBe(true);
  });

  it('is loaded anew where the tune itself changes, and comes back to the same place', async () => {
    await open('tunes/kettle-on-the-sill.html');
    await page.evaluate(() => scrollTo(0, 500));
    const at = await scrolled();
    expect(at).toBeGreaterThan(200);
    writeFileSync(tune, tuneAsWritten.replace('T:Kettle on the Sill', 'T:Kettle off the Sill'));
    await page.getByRole('heading', { name: 'Kettle off the Sill' }).waitFor({ state: 'attached' });
    await page.waitForLoadState('load');
    expect(await isSamePage()).toBe(false);
    await expect.poll(scrolled).toBe(at);
    writeFileSync(tune, tuneAsWritten);
  });

  it('is left alone by a change elsewhere', async () => {
    await open('how-to-read.html');
    const asked: string[] = [];
    page.on('request', request => asked.push(new URL(request.url()).pathname));
    const before = turns;
    writeFileSync(lesson, longLesson('Somewhere else.'));
    await expect.poll(() => turns, { timeout: 20_000 }).toBeGreaterThan(before);
    // News comes in order: once the page tells of an error, it has heard of the change before.
    writeFileSync(lesson, longLesson('::map{of=kettle-on-the-sill unot=4}'));
    await panel().getByText('1 error').waitFor({ state: 'attached' });
    writeFileSync(lesson, longLesson('All is well again.'));
    await page.locator('.preview-panel[data-severity="none"]').waitFor({ state: 'attached' });
    expect(asked.filter(path => path.endsWith('.html'))).toEqual([]);
    expect(await isSamePage()).toBe(true);
  });

  it('shows an error over the last good page, until it is mended', async () => {
    writeFileSync(lesson, longLesson('All is well.'));
    await open('lessons/2026-09-15-first-evening.html');
    await page.getByText('All is well.').waitFor({ state: 'attached' });
    writeFileSync(lesson, longLesson('::map{of=kettle-on-the-sill unot=4}'));
    await panel().getByText('lessons/2026-09-15-first-evening.md, Line 5, column 29').waitFor();
    expect(await panel().locator('summary').textContent()).toContain('1 error');
    expect(await panel().textContent()).toContain('unit');
    const excerpt = await panel().locator('pre').textContent();
    const [line, caret] = excerpt?.split('\n') ?? [];
    expect(caret?.indexOf('^')).toBe(line?.indexOf('unot='));
    await page.getByText('All is well.').waitFor({ state: 'attached' });
    // Folded by keyboard it stays folded, on the next page too.
    await panel().locator('summary').focus();
    await page.keyboard.press('Enter');
    await panel().locator('pre').waitFor({ state: 'hidden' });
    await page.reload();
    await panel().getByText('1 error').waitFor();
    expect(await panel().locator('pre').isVisible()).toBe(false);
    writeFileSync(lesson, longLesson('Mended now.'));
    await page.getByText('Mended now.').waitFor({ state: 'attached' });
    await panel().getByText('nothing wrong').waitFor();
  });

  it('is kept by no service worker', async () => {
    await open('');
    await page.waitForLoadState('networkidle').catch(() => {});
    expect(
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length),
    ).toBe(0);
    expect(await page.locator('[data-kept]').count()).toBe(0);
  });

  it.each([
    ['light', 320],
    ['dark', 900],
  ] as const)('can be used by everyone with the panel open: %s, %d px', async (scheme, width) => {
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width, height: 700 });
    await page.goto(`${preview.address}lessons/2026-09-15-first-evening.html`);
    writeFileSync(lesson, longLesson('::map{of=kettle-on-the-sill unot=4}'));
    await panel().locator('pre').waitFor();
    expect(await faultsOf(page)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(width);
    writeFileSync(lesson, longLesson('Mended again.'));
    await panel().getByText('nothing wrong').waitFor();
  });
});

async function faultsOf(of: Page): Promise<string[]> {
  await of.evaluate(axe);
  return of.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run: (what: object, how: object) => Promise<{ violations: { id: string }[] }> };
    };
    const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const { violations } = await axe.run(document, { runOnly: rules });
    return violations.map(({ id }) => id);
  });
}

describe('tapping along with a recording', () => {
  const at = (seconds: number): Promise<void> =>
    page.evaluate(async time => {
      const audio = document.querySelector('audio') as HTMLAudioElement;
      audio.currentTime = time;
      await new Promise(done => audio.addEventListener('seeked', done, { once: true }));
    }, seconds);
  const line = (): Promise<string> => page.getByLabel('The line for your lesson').inputValue();
  const cuesOf = async (): Promise<string> => /at="([^"]*)"/.exec(await line())?.[1] ?? '';

  beforeEach(async () => {
    await page.goto(`${preview.address}preview/tap.html`);
    await page.getByRole('button', { name: 'Bar A1 begins' }).waitFor();
    await page.waitForFunction(
      () => (document.querySelector('audio')?.readyState ?? 0) >= HTMLMediaElement.HAVE_METADATA,
    );
  });

  it('writes the line that the build reads, by button, space bar and Enter', async () => {
    await at(0.5);
    await page.getByRole('button', { name: 'Bar A1 begins' }).click();
    await at(3);
    await page.keyboard.press(' ');
    expect(await cuesOf()).toBe('A1=0:00.5 A3=0:03');
    // The same part again.
    await at(5.5);
    await page.getByRole('button', { name: 'Bar A1/2 begins' }).focus();
    await page.keyboard.press('Enter');
    await at(8);
    await page.keyboard.press(' ');
    expect(await cuesOf()).toBe('A1=0:00.5 A3=0:03 A1/2=0:05.5 A3/2=0:08');
    await page.getByLabel('What the recording is called').fill('At the kettle’s pace');
    const written = await line();
    expect(written).toMatch(/^::clip\[At the kettle’s pace\]\{src="media\/kettle 100%\.wav" of=/);
    const before = readFileSync(lesson, 'utf8');
    writeFileSync(lesson, `${before}\n${written}\n`);
    const readLesson = async () =>
      (await fetch(`${preview.address}lessons/2026-09-15-first-evening.html`)).text();
    await expect.poll(readLesson, { timeout: 20_000 }).toContain('At the kettle’s pace');
    writeFileSync(lesson, before);
  });

  it('is pressed once by any way of pressing: a screen reader’s too', async () => {
    await at(1);
    await page.evaluate(() => document.querySelector<HTMLElement>('.tap-button')?.click());
    expect(await cuesOf()).toBe('A1=0:01');
    await at(4);
    await page.locator('.tap-button').focus();
    await page.keyboard.press('Enter', { delay: 50 });
    expect(await cuesOf()).toBe('A1=0:01 A3=0:04');
    await at(7);
    await page.keyboard.press(' ', { delay: 50 });
    expect(await cuesOf()).toBe('A1=0:01 A3=0:04 A1/2=0:07');
  });

  it('takes back, moves, passes over, and copies', async () => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await at(1);
    await page.keyboard.press(' ');
    await page.getByRole('button', { name: 'Not in the recording' }).click();
    await at(5);
    await page.getByRole('button', { name: 'Bar A1/2 begins' }).click();
    expect(await cuesOf()).toBe('A1=0:01 A1/2=0:05');
    await page.getByRole('button', { name: 'A1/2 a little later' }).click();
    await page.keyboard.press('Enter'); // the focus has stayed on it
    await page.getByRole('button', { name: 'A1 a little earlier' }).click();
    expect(await cuesOf()).toBe('A1=0:00.95 A1/2=0:05.1');
    await page.getByRole('button', { name: 'Undo the last' }).click();
    expect(await cuesOf()).toBe('A1=0:00.95');
    await page.getByRole('button', { name: 'Copy' }).click();
    await page.getByText('Copied.').waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(await line());
  });

  it('leaves the space bar to a field, and asks for consent where a learner is heard', async () => {
    await page.getByLabel('What the recording is called').press(' ');
    expect(await cuesOf()).toBe('');
    await page.getByLabel('A learner is heard or seen in it').check();
    await page.getByLabel('Who consented, and when').fill('she and her mother, May');
    expect(await line()).toContain('learner consent="she and her mother, May"');
  });

  it('says where a cue strays from the recording’s pace', async () => {
    for (const seconds of [0, 1, 2, 3.6, 4.1]) {
      await at(seconds + 0.25);
      await page.keyboard.press(' ');
    }
    expect(await page.locator('.tap-amiss').textContent()).toMatch(/The cue A3\/2 at 0:03\.9/);
  });

  it.each([
    ['light', 320],
    ['dark', 900],
  ] as const)('can be used by everyone: %s, %d px', async (scheme, width) => {
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width, height: 900 });
    await at(1);
    await page.keyboard.press(' ');
    await page.getByLabel('A learner is heard or seen in it').check();
    expect(await faultsOf(page)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(width);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button')]
        .filter(b => b.getBoundingClientRect().height < 44)
        .map(b => b.textContent),
    );
    expect(small).toEqual([]);
  });
});
