import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openAwake } from './open-awake.ts';

// Rules are those of WCAG 2.2, levels A and AA, as axe-core checks them; a success criterion that
// a test of ours measures itself is named beside it.

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let demo: DemoSite;
beforeAll(async () => {
  demo = await openDemoSite();
  expect(demo.pages.length).toBeGreaterThan(15);
});
afterAll(() => demo?.close());

const everyRule: RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  rules: { 'target-size': { enabled: true } },
  resultTypes: ['violations'],
};
/** The rules whose answer hangs on the colours; the others say the same in every look. */
const colourRules: RunOptions = {
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
  resultTypes: ['violations'],
  preload: false,
};

/** What axe-core finds wrong on a page: the rule, the place, and what it says of it. */
async function violations(page: Page, options: RunOptions): Promise<string[]> {
  // What is folded away would not be looked at.
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
  const has = await page.evaluate(() => 'axe' in globalThis);
  if (!has) await page.addScriptTag({ content: axe });
  const result = await page.evaluate(
    o => (globalThis as unknown as { axe: { run(o: RunOptions): Promise<AxeResults> } }).axe.run(o),
    options,
  );
  return result.violations.flatMap(v =>
    v.nodes.map(n => `${v.id} at ${n.target.join(' ')}: ${n.failureSummary?.replace(/\s+/g, ' ')}`),
  );
}

const looks = [
  ['light', '(prefers-color-scheme: light)', { colorScheme: 'light' }, everyRule],
  ['dark', '(prefers-color-scheme: dark)', { colorScheme: 'dark' }, colourRules],
  ['forced colours', '(forced-colors: active)', { forcedColors: 'active' }, colourRules],
] as const;

describe('axe-core, against WCAG 2.2 AA', () => {
  it('finds nothing on any page in light, dark and forced colours', {
    tags: ['slow'],
    timeout: 400_000,
  }, async () => {
    // The pages' own policy lets no script in but theirs: for axe-core alone it is set aside.
    const found = await demo.onEveryPage({ bypassCSP: true }, async page => {
      const inAll: string[] = [];
      for (const [look, query, media, rules] of looks) {
        await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none', ...media });
        expect(await page.evaluate(q => matchMedia(q).matches, query)).toBe(true);
        inAll.push(...(await violations(page, rules)).map(v => `${look}, ${v}`));
      }
      return inAll;
    });
    expect(found).toEqual([]);
  });

  it('finds a fault that is put in', async () => {
    const page = await demo.browser.newPage({ bypassCSP: true });
    await openAwake(page, demo.addressOf('index.html'));
    await page.evaluate(() => {
      document.documentElement.removeAttribute('lang');
      document.querySelector('h1')?.setAttribute('style', 'color: #ccc; background: #fff');
    });
    const rules = (await violations(page, everyRule)).map(v => v.split(' ')[0]);
    expect(rules).toEqual(expect.arrayContaining(['color-contrast', 'html-has-lang']));
    await page.close();
  });
});

/** One stop of the Tab key: its number among all that can have the focus, and what shows there. */
interface Stop {
  readonly at: number;
  readonly name: string;
  readonly outline: number;
  readonly inView: boolean;
}

/** What the Tab key should stop at, in the order of the page; of a group of radios, the chosen one. */
const stopsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const kinds =
      'a[href], summary, input, button, select, textarea, audio[controls], video[controls], [tabindex="0"]';
    const all = [...document.querySelectorAll<HTMLElement>(kinds)];
    const shown = all.filter(
      e => e.checkVisibility() && e.tabIndex >= 0 && !e.matches(':disabled'),
    );
    const stops = shown.filter(
      e => !(e instanceof HTMLInputElement && e.type === 'radio' && !e.checked),
    );
    for (const [i, e] of stops.entries()) e.dataset.stop = String(i);
    return stops.map(e => `${e.localName} ${e.textContent?.trim().slice(0, 30)}`);
  });

const stopNow = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const e = document.activeElement as HTMLElement;
    const style = getComputedStyle(e);
    const box = e.getBoundingClientRect();
    return {
      at: Number(e.dataset.stop ?? -1),
      name: `${e.localName} ${e.textContent?.trim().slice(0, 30)}`,
      outline: style.outlineStyle === 'none' ? 0 : Number.parseFloat(style.outlineWidth),
      inView: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
    };
  });

describe('forced colours', () => {
  it('mark the page we are on in the masthead, and no other', async () => {
    const page = await demo.browser.newPage({ forcedColors: 'active' });
    await openAwake(page, demo.addressOf('how-to-read.html'));
    const lines = await page.evaluate(() => {
      const paper = getComputedStyle(document.body).backgroundColor;
      return [...document.querySelectorAll('.masthead li a')].map(a => ({
        current: a.hasAttribute('aria-current'),
        underlined: getComputedStyle(a).borderBottomColor !== paper,
      }));
    });
    expect(lines.filter(l => l.current)).toHaveLength(1);
    expect(lines.filter(l => l.current !== l.underlined)).toEqual([]);
    await page.close();
  });
});

describe('the keyboard alone', () => {
  const walked = () => [
    demo.pages.find(p => /^lessons\/(?!index)/.test(p)) ?? '',
    demo.pages.find(p => /^tunes\/(?!index)/.test(p)) ?? '',
  ];

  it('reaches everything in the order of the page, and shows where it is', async () => {
    for (const path of walked()) {
      const page = await demo.browser.newPage();
      await openAwake(page, demo.addressOf(path));
      const expected = await stopsOf(page);
      expect(expected.length).toBeGreaterThan(10);
      const stops: Stop[] = [];
      for (let i = 0; i < 2 * expected.length && stops.length < expected.length; i++) {
        await page.keyboard.press('Tab');
        const stop = await stopNow(page);
        // A recording's own controls are several stops in one element.
        if (stop.at !== stops.at(-1)?.at) stops.push(stop);
      }
      expect(stops.map(s => s.name)).toEqual(expected);
      expect(stops.map(s => s.at)).toEqual(expected.map((_, i) => i));
      // 2.4.7 Focus Visible; two pixels at least, as 2.4.13 asks at level AAA. 2.4.11 Not Obscured.
      expect(stops.filter(s => s.outline < 2 || !s.inView)).toEqual([]);
      await page.close();
    }
  });

  it('skips to the page, chooses marks, and folds and unfolds', async () => {
    for (const path of walked()) {
      const page = await demo.browser.newPage();
      await openAwake(page, demo.addressOf(path));
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('page');
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.closest('main')?.id)).toBe('page');

      await page.locator('[name=marks]:checked').focus();
      await page.keyboard.press('ArrowDown');
      expect(await page.locator('[name=marks]:checked').getAttribute('value')).toBe('starts');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
      expect(await page.locator('[name=fingers]').isChecked()).toBe(true);
      expect(await page.locator('main .layer-fingers').first().isVisible()).toBe(true);

      const fold = page.locator('details').first();
      const isOpen = () => fold.evaluate((e: HTMLDetailsElement) => e.open);
      const before = await isOpen();
      await fold.locator('summary').focus();
      await page.keyboard.press('Enter');
      expect(await isOpen()).toBe(!before);
      await page.close();
    }
  });
});
