import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type {
  Browser,
  BrowserContext,
  BrowserContextOptions,
  Locator,
  Page,
} from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startChromium } from './chromium.ts';
import { forget, listenIn, type StartedSound, samplesHeard, startedSounds } from './hearing.ts';
import { awake, openAwake } from './open-awake.ts';
import { lesson, openPlayerBook, type PlayerBook, withheld } from './player-book.ts';

let book: PlayerBook;
let browser: Browser;
beforeAll(async () => {
  book = await openPlayerBook();
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
  book?.close();
});

const tune = 'tunes/the-tide-table.html';

/** A page open to be heard, and what it complained of. */
interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly said: readonly string[];
}

async function open(
  path: string,
  root: 'file' | 'http' = 'file',
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext(options);
  await listenIn(context);
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', m => {
    if (['error', 'warning'].includes(m.type())) said.push(m.text());
  });
  page.on('pageerror', e => said.push(e.message));
  await page.goto(book.roots[root] + path);
  if (options.javaScriptEnabled !== false) await awake(page);
  return { page, context, said };
}

const playButton = (page: Page): Locator => page.locator('[data-does="play"]').first();
const field = (page: Page, name: string): Locator =>
  page.locator(`.player [name="${name}"]`).first();
const openPanel = (page: Page): Promise<void> =>
  page
    .locator('.player-panel')
    .first()
    .evaluate((e: HTMLDetailsElement) => {
      e.open = true;
    });
const set = (page: Page, name: string, value: string): Promise<void> =>
  field(page, name).evaluate((e, v) => {
    (e as HTMLInputElement).value = v;
    e.dispatchEvent(new Event('input', { bubbles: true }));
  }, value);
const isPlaying = (page: Page): Promise<boolean> =>
  page
    .locator('.player')
    .first()
    .evaluate(e => (e as HTMLElement).dataset.state === 'playing');

/** The round that goes on for ever, once it is laid. */
async function loopOf(page: Page): Promise<StartedSound> {
  await page.waitForFunction(() =>
    (globalThis as unknown as { heard: { loop: boolean }[] }).heard.some(h => h.loop),
  );
  const found = (await startedSounds(page)).find(s => s.loop);
  if (!found) throw new Error('nothing loops');
  return found;
}

/** Plays anew and says how long a round is, in seconds. */
async function roundLength(page: Page): Promise<number> {
  if (await isPlaying(page)) await playButton(page).click();
  await forget(page);
  await playButton(page).click();
  const { length, rate } = await loopOf(page);
  await playButton(page).click();
  return length / rate;
}

/** Seconds of so many minims at so many a minute, to the sample. */
const minims = (count: number, perMinute: number): number => (count * 60) / perMinute;

describe.each(['file', 'http'] as const)('the player, over %s', root => {
  it('plays, follows the note and its stroke in notation and map, and stops', async () => {
    const { page, context, said } = await open(tune, root);
    await field(page, 'countIn').evaluate((e: HTMLInputElement) => e.click());
    expect(await playButton(page).textContent()).toContain('Play');
    await playButton(page).click();
    const sounding = page.locator('.notation-section .sounding');
    await sounding.first().waitFor();
    const first = Number(await sounding.first().getAttribute('data-n'));
    expect(await playButton(page).textContent()).toContain('Stop');
    expect(await page.locator('.map .sounding-phrase').count()).toBe(1);
    expect(await page.locator('.player').first().getAttribute('data-stroke')).toMatch(
      /^(down|up)$/,
    );
    await page.waitForFunction(
      n => Number(document.querySelector('.sounding')?.getAttribute('data-n') ?? 0) > n + 2,
      first,
    );
    // Screen readers are left in peace while it sounds.
    expect(await page.locator('[data-shows="said"]').first().textContent()).toBe('');
    await playButton(page).click();
    expect(await isPlaying(page)).toBe(false);
    expect(await page.locator('.sounding, .in-stroke, .sounding-phrase').count()).toBe(0);
    expect(said).toEqual([]);
    await context.close();
  });
});

describe('what is heard', () => {
  it('loops with no gap: a round later the same samples come, exactly', {
    tags: ['slow'],
  }, async () => {
    const { page, context } = await open(tune);
    await openPanel(page);
    await field(page, 'countIn').uncheck();
    await field(page, 'breath').selectOption('0');
    await page.locator('button[data-phrase="1"]').click();
    await playButton(page).click();
    const loop = await loopOf(page);
    const sounds = await startedSounds(page);
    const { rate, length } = loop;
    // Each piece begins on the sample at which the one before it ends.
    sounds.slice(1).forEach((s, i) => {
      const before = sounds[i] as StartedSound;
      expect(Math.abs((s.when - before.when) * rate - before.length)).toBeLessThan(0.01);
    });
    const samples = await samplesHeard(page, (length / rate) * 3);
    expect(samples.length).toBeGreaterThan(2.9 * length);
    const unlike = (lag: number): number => {
      let sum = 0;
      for (let i = length - 2000; i < length + 2000; i++) {
        sum += Math.abs((samples[i] ?? 0) - (samples[i + lag] ?? 0));
      }
      return sum;
    };
    const most = Math.round(rate * 0.02);
    let best = 0;
    for (let d = -most; d <= most; d++) if (unlike(length + d) < unlike(length + best)) best = d;
    expect(Math.abs(best) / rate).toBeLessThan(0.005);
    expect(length / rate).toBeCloseTo(minims(4, 50), 3);
    // No silence of 5 ms stands at the seams but what the turn of a bow has.
    for (const seam of [length, 2 * length]) {
      let silent = 0;
      for (let i = seam - rate / 20; i < seam + rate / 20; i++) {
        silent = Math.abs(samples[Math.round(i)] ?? 0) < 1e-4 ? silent + 1 : 0;
        expect(silent / rate).toBeLessThan(0.005);
      }
    }
    await context.close();
  });

  it('is as long as tempo, passage, breath and answer say', { tags: ['slow'] }, async () => {
    const { page, context } = await open(tune);
    await openPanel(page);
    await field(page, 'breath').selectOption('0');
    await field(page, 'countIn').uncheck();
    await page.locator('button[data-phrase="1"]').click();
    expect(await roundLength(page)).toBeCloseTo(minims(4, 50), 4);
    await set(page, 'percent', '30');
    expect(await roundLength(page)).toBeCloseTo(minims(4, 15), 4);
    await page.locator('[name="pace"][value="session"]').check();
    await set(page, 'percent', '120');
    expect(await roundLength(page)).toBeCloseTo(minims(4, 126), 4);
    await field(page, 'breath').selectOption('2');
    expect(await roundLength(page)).toBeCloseTo(minims(6, 126), 4);
    await field(page, 'breath').selectOption('0');
    await field(page, 'answer').check();
    expect(await roundLength(page)).toBeCloseTo(minims(8, 126), 4);
    await field(page, 'answer').uncheck();
    await page.locator('button[data-phrase="2"]').click();
    expect(await roundLength(page)).toBeCloseTo(minims(8, 126), 4);
    await page.locator('[data-choice="part-1"]').click();
    expect(await roundLength(page)).toBeCloseTo(minims(32, 126), 4);
    await page.locator('[data-choice^="into-"]').first().click();
    const into = await roundLength(page);
    expect(into).toBeGreaterThan(minims(8, 126));
    expect(into).toBeLessThan(minims(32, 126));
    await context.close();
  });

  it('climbs as it goes round, counts in, and ends where it does not loop', {
    tags: ['slow'],
  }, async () => {
    const { page, context } = await open(tune);
    await openPanel(page);
    await page.locator('[name="pace"][value="session"]').check();
    await set(page, 'percent', '90');
    await field(page, 'climb').check();
    await field(page, 'climbBy').selectOption('5');
    await field(page, 'climbEvery').selectOption('1');
    await field(page, 'climbTo').selectOption('session');
    await field(page, 'breath').selectOption('0');
    await page.locator('button[data-phrase="1"]').click();
    await playButton(page).click();
    const loop = await loopOf(page);
    // 94.5, 99.5, 104.5, and then 105 for ever; a bar of two minims before them.
    expect(loop.length / loop.rate).toBeCloseTo(minims(4, 105), 4);
    const [first] = await startedSounds(page);
    const before = loop.when - (first?.when ?? 0);
    const climbed = [94.5, 99.5, 104.5, 105].reduce((sum, t) => sum + minims(4, t), 0);
    expect(before).toBeCloseTo(minims(2, 94.5) + climbed, 2);
    await playButton(page).click();

    await field(page, 'climb').uncheck();
    await field(page, 'loop').uncheck();
    await field(page, 'countIn').uncheck();
    await playButton(page).click();
    await page.locator('.player[data-state="still"]').first().waitFor({ timeout: 15_000 });
    await context.close();
  });
});

describe('every control', () => {
  it('answers to the keyboard alone, and the space bar plays and stops elsewhere', async () => {
    const { page, context, said } = await open(tune);
    await page.locator('body').press('Space');
    await expect.poll(() => isPlaying(page)).toBe(true);
    await page.locator('body').press('Space');
    expect(await isPlaying(page)).toBe(false);
    await page.locator('.player-panel summary').first().press('Enter');
    const press = async (target: Locator, key: string): Promise<void> => {
      await target.focus();
      await target.press(key);
    };
    for (const name of ['loop', 'countIn', 'pulse', 'answer', 'climb']) {
      const was = await field(page, name).isChecked();
      await press(field(page, name), 'Space');
      expect(await field(page, name).isChecked(), name).toBe(!was);
      expect(await isPlaying(page), name).toBe(false);
    }
    await press(page.locator('[name="pace"]:checked').first(), 'ArrowRight');
    expect(await page.locator('.player-now').first().textContent()).toContain('minim = 78, slow');
    await press(field(page, 'percent'), 'ArrowLeft');
    expect(await page.locator('.player-now').first().textContent()).toContain('99 % of slow');
    await press(page.locator('[data-does="faster"]').first(), 'Enter');
    expect(await field(page, 'percent').inputValue()).toBe('105');
    await press(page.locator('[data-does="slower"]').first(), 'Space');
    expect(await field(page, 'percent').inputValue()).toBe('100');
    const lilt = await field(page, 'lilt').inputValue();
    await press(field(page, 'lilt'), 'ArrowRight');
    expect(await field(page, 'lilt').inputValue()).not.toBe(lilt);
    for (const name of ['breath', 'pass', 'climbBy', 'climbEvery', 'climbTo']) {
      const was = await field(page, name).inputValue();
      await press(field(page, name), 'Home');
      await press(
        field(page, name),
        was === (await field(page, name).inputValue()) ? 'End' : 'Home',
      );
      expect(await field(page, name).inputValue(), name).not.toBe(was);
    }
    const phrase = page.locator('button[data-phrase="0"]');
    await press(phrase, 'Enter');
    expect(await phrase.getAttribute('aria-pressed')).toBe('true');
    await press(page.locator('[data-choice="part-0"]'), 'Space');
    expect(await page.locator('.player-now').first().textContent()).toContain('Part A');
    // The map's blocks are links: they lead to the phrase in the notation, and choose it.
    await press(page.locator('.map a.phrase').nth(1), 'Enter');
    expect(await page.locator('button[data-phrase="1"]').getAttribute('aria-pressed')).toBe('true');
    await press(playButton(page), 'Enter');
    expect(await isPlaying(page)).toBe(true);
    await press(playButton(page), 'Space');
    expect(await isPlaying(page)).toBe(false);
    expect(said).toEqual([]);
    await context.close();
  });

  it('answers to touch: phrases in the notation, a second one to reach to', async () => {
    const { page, context, said } = await open(tune, 'file', {
      hasTouch: true,
      viewport: { width: 360, height: 740 },
    });
    const stave = (phrase: number): Locator =>
      page.locator(`.notation-section .stave[data-phrase="${phrase}"]`).first();
    const now = page.locator('.player-now b').first();
    await stave(1).tap();
    expect(await now.textContent()).toMatch(/^Phrase b, /);
    await stave(3).tap();
    expect(await now.textContent()).toBe('From A3-A4 to A7-A8');
    expect(await page.locator('.stave.chosen-phrase').count()).toBe(3);
    await stave(0).tap();
    await stave(0).tap();
    expect(await now.textContent()).toBe('All of it');
    await playButton(page).tap();
    expect(await isPlaying(page)).toBe(true);
    await page.locator('[data-does="slower"]').first().tap();
    expect(await page.locator('.player-tempo').first().textContent()).toContain('95 % of learning');
    await page.locator('.player-loop').first().tap();
    expect(await field(page, 'loop').isChecked()).toBe(false);
    await playButton(page).tap();
    expect(await isPlaying(page)).toBe(false);
    expect(said).toEqual([]);
    await context.close();
  });

  it('is 44 pixels high and wide at least, and none is lost at 320 pixels', async () => {
    const { page, context } = await open(lesson, 'file', { viewport: { width: 320, height: 640 } });
    await openPanel(page);
    await field(page, 'climb').evaluate((e: HTMLInputElement) => e.click());
    const small = await page.evaluate(() => {
      const all = document.querySelectorAll<HTMLElement>(
        '.player button, .player label, .player summary, .clip button, .clip label',
      );
      return [...all]
        .filter(e => e.checkVisibility())
        .map(e => ({ e, box: e.getBoundingClientRect() }))
        .filter(
          ({ box }) => box.height < 44 || box.width < 44 || box.right > innerWidth || box.left < 0,
        )
        .map(({ e, box }) => `${e.textContent?.trim().slice(0, 30)} ${box.width} × ${box.height}`);
    });
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(
      true,
    );
    await context.close();
  });

  it('is remembered on the device', async () => {
    const { page, context } = await open(tune);
    await openPanel(page);
    await page.locator('[name="pace"][value="slow"]').check();
    await set(page, 'percent', '80');
    await field(page, 'pulse').check();
    await field(page, 'breath').selectOption('4');
    await page.reload();
    await awake(page);
    expect(await page.locator('.player-now').first().textContent()).toContain('80 % of slow');
    expect(await field(page, 'pulse').isChecked()).toBe(true);
    expect(await field(page, 'breath').inputValue()).toBe('4');
    const keys = await page.evaluate(() => Object.keys(localStorage));
    expect(keys.filter(k => !k.startsWith('bowbook.'))).toEqual([]);
    await context.close();
  });
});

describe('a recording', () => {
  it('plays a phrase from its cue, loops it, and is slowed without a change of pitch', async () => {
    const { page, context, said } = await open(lesson);
    const clip = page.locator('[data-clip]');
    const state = () =>
      clip.locator('audio').evaluate((a: HTMLAudioElement) => ({
        at: a.currentTime,
        paused: a.paused,
        rate: a.playbackRate,
        keeps: a.preservesPitch,
      }));
    await expect
      .poll(() => clip.locator('audio').evaluate((a: HTMLAudioElement) => a.readyState))
      .toBeGreaterThan(0);
    const phrases = clip.locator('button[data-from]');
    // A3 stands at 6 seconds; the pickup belongs to the first phrase.
    const second = phrases.nth(1);
    expect(Number(await second.getAttribute('data-from'))).toBeCloseTo(6, 1);
    expect(Number(await second.getAttribute('data-to'))).toBeCloseTo(10, 1);
    await clip.locator('[name="clipSpeed"]').focus();
    await page.keyboard.press('Home');
    await second.click();
    await expect.poll(async () => (await state()).at).toBeGreaterThan(6);
    expect(await state()).toMatchObject({ paused: false, rate: 0.5, keeps: true });
    await page.keyboard.press('Tab');
    await clip.locator('audio').evaluate((a: HTMLAudioElement) => {
      a.currentTime = 9.9;
    });
    await expect.poll(async () => (await state()).at, { timeout: 5000 }).toBeLessThan(7);
    expect((await state()).paused).toBe(false);
    await second.press('Enter');
    expect((await state()).paused).toBe(true);
    expect(said).toEqual([]);
    await context.close();
  });

  it('falls silent when the player begins, and the player when it does', async () => {
    const { page, context } = await open(lesson);
    const clip = page.locator('[data-clip]');
    await clip.locator('button[data-from]').first().click();
    const paused = () => clip.locator('audio').evaluate((a: HTMLAudioElement) => a.paused);
    await expect.poll(paused).toBe(false);
    await playButton(page).click();
    await expect.poll(paused).toBe(true);
    await clip.locator('button[data-from]').nth(1).click();
    await expect.poll(() => isPlaying(page)).toBe(false);
    await context.close();
  });

  it('that is kept elsewhere is a link, and nothing is loaded from it', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const asked: string[] = [];
    page.on('request', r => asked.push(r.url()));
    await openAwake(page, book.roots.file + lesson);
    const link = page.locator('.clip a');
    expect(await link.getAttribute('href')).toBe('https://example.org/tide');
    expect(asked.filter(url => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
    await context.close();
  });

  it('of a learner who has not agreed does not stand on the page', async () => {
    const { page, context } = await open(lesson);
    expect(await page.locator('.clip').count()).toBe(2);
    expect(await page.content()).not.toContain('who was not asked');
    await context.close();
  });
});

describe('the page around it', () => {
  it('has no player where the rights are not known, and none without script', async () => {
    const { page, context } = await open(`tunes/${withheld}.html`);
    expect(await page.locator('.player').count()).toBe(0);
    await context.close();
    const plain = await open(tune, 'file', { javaScriptEnabled: false });
    expect(await plain.page.locator('.player').first().isVisible()).toBe(false);
    await plain.context.close();
  });

  it('loads 40 KB of script at most, gzipped, and asks for a tune only when it is to sound', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const asked: string[] = [];
    page.on('request', r => {
      if (r.resourceType() === 'script') asked.push(r.url());
    });
    await openAwake(page, book.roots.http + lesson);
    const own = asked.filter(url => /\/(?:page|player)\.js$/.test(url));
    expect(own.length).toBe(2);
    expect(asked.filter(url => url.includes('/tunes/'))).toEqual([]);
    const size = own
      .map(url => gzipSync(readFileSync(join(book.site, new URL(url).pathname))).length)
      .reduce((a, b) => a + b, 0);
    expect(size).toBeLessThan(40 * 1024);
    await playButton(page).click();
    await expect.poll(() => asked.filter(url => url.includes('/tunes/')).length).toBe(1);
    await context.close();
  });

  it('is quiet when it is left', async () => {
    const { page, context } = await open(tune);
    await playButton(page).click();
    expect(await isPlaying(page)).toBe(true);
    await page.evaluate(() => dispatchEvent(new PageTransitionEvent('pagehide')));
    expect(await isPlaying(page)).toBe(false);
    await context.close();
  });
});
