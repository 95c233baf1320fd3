import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { build } from 'esbuild';
import fc from 'fast-check';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withJoins } from '../../shared/bowing/apply-edit.ts';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import { editedAbc } from '../../shared/music/edited-abc.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { openTrial, tuneWith } from '../../shared/trying/trial.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { explainFile } from '../../src/app/explain.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { requestFor, tuneOf, weighbridge, withPassage } from '../try/try-tunes.ts';
import { sampleOfReal } from '../tunes/on-tunes.ts';
import { ownTunes } from '../tunes/own-tunes.ts';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openAwake } from './open-awake.ts';

const lesson = 'lessons/2026-09-22-three-in-a-bow.html';
const written = 'lessons/2026-09-22-three-in-a-bow.md';
const content = join(import.meta.dirname, '../../content');

let demo: DemoSite;
let folder: string;
beforeAll(async () => {
  demo = await openDemoSite();
  folder = mkdtempSync(join(tmpdir(), 'bowbook-try-'));
});
afterAll(async () => {
  await demo?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Opens a page from its folder, with no network, and the place to try strokes on it. */
async function openTry(hash = '', options = {}): Promise<Page> {
  const page = await demo.browser.newPage({ offline: true, ...options });
  await openAwake(page, demo.addressOf(lesson) + hash);
  if (hash === '') await page.locator('details.try summary').click();
  await page.waitForSelector('.beads .bead');
  return page;
}

/** What the page shows: every note of the way with its stroke and link, and what is said of it. */
const shownOn = (page: Page) =>
  page.evaluate(() => ({
    notes: [...document.querySelectorAll<HTMLElement>('.bead-cell:not(.passage)')].map(cell => ({
      event: Number(cell.querySelector<HTMLElement>('[data-bead]')?.dataset.bead),
      direction: cell.dataset.direction,
      slurred: cell.querySelector('.bead-link')?.getAttribute('aria-pressed') === 'true',
    })),
    count: document.querySelector('.try-count')?.textContent ?? '',
    arrivals: [...document.querySelectorAll('.try-outcome .arrival')].map(p => p.textContent ?? ''),
    said: document.querySelector('.try-said')?.textContent ?? '',
    status: document.querySelector('.try-room > div > [role=status]')?.textContent ?? '',
  }));

const linkAt = (page: Page, n: number) => page.locator('.bead-link').nth(n);

describe('the answers of the place to try strokes', () => {
  /**
   * The part of a study that slurs bear on: columns of notes move when slurs are written. Whole bowings
   * are proposed by `explain` alone, and so is the ABC of a mend: the page has no ABC with slurs tried.
   */
  const answers = (json: string, read: number): object => {
    const { tunes, problems } = JSON.parse(json, (key, value) =>
      key === 'abc' ? undefined : value,
    );
    type Told = { notes: object; id: string; proposals: object };
    const plain = tunes.map(({ notes: _, id: __, proposals: ___, ...rest }: Told) => rest);
    return {
      tunes: plain,
      problems: problems
        .slice(read)
        .map(({ rule, severity, message }: Record<string, string>) => [rule, severity, message]),
    };
  };

  it('are those of `explain --json` on the ABC with the same slurs, for random slurs', {
    tags: ['slow'],
    timeout: 120_000,
  }, async () => {
    const bundle = await build({
      entryPoints: [join(import.meta.dirname, 'try-page.ts')],
      bundle: true,
      format: 'iife',
      write: false,
    });
    const page = await demo.browser.newPage();
    await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' });
    const { tunes } = await studyBook(content, () => {});
    const own = tunes.flatMap(({ study, request }) =>
      request.anchors.map(a => ({ abc: study?.tune.source.text ?? '', bars: barsOf(a.bars) })),
    );
    expect(own.length).toBeGreaterThan(4);
    const file = join(folder, 'tune.abc');
    let compared = 0;
    let arrived = 0;
    const some = ownTunes.filter((_, i) => i % 8 === 0);
    for (const { abc, bars } of [...own, ...withPassage([...some, ...sampleOfReal(130)])]) {
      const tune = tuneOf(abc);
      const request = requestFor(bars, 'up');
      const trial = openTrial(tune, request, 'anchor', { level: null, preset: null });
      if (!trial) continue;
      const bowings = fc.sample(
        fc.array(fc.boolean(), {
          minLength: trial.junctions.length,
          maxLength: trial.junctions.length,
        }),
        { numRuns: 4 },
      );
      const said = await page.evaluate(
        ([t, r, b]) =>
          (globalThis as unknown as { tryBowings: (...a: unknown[]) => string[] }).tryBowings(
            t,
            r,
            b,
          ),
        [tune, request, bowings] as const,
      );
      for (const [i, bowing] of bowings.entries()) {
        const slurred = editedAbc(tune, tuneWith(trial, bowing));
        writeFileSync(file, slurred);
        const { text } = await explainFile(file, { json: true, anchor: bars, arrive: 'up' });
        // `explain` tells first what the reading of the ABC found, and the page reads none.
        const read = parseTunes({ text: slurred, file, line: 1, indent: 0 }).problems.length;
        expect(answers(said[i] ?? '', 0), `${tune.title} ${bars}`).toEqual(answers(text, read));
        compared++;
        if (/"agrees":true/.test(said[i] ?? '')) arrived++;
      }
    }
    expect(compared).toBeGreaterThan(30);
    expect(arrived).toBeGreaterThan(10);
    expect(compared - arrived).toBeGreaterThan(5);
    await page.close();
  });

  it('stand on the page as `explain --json` says them of the lesson with those slurs', {
    tags: ['slow'],
    timeout: 60_000,
  }, async () => {
    const book = join(folder, 'book');
    cpSync(content, book, { recursive: true });
    const markdown = readFileSync(join(content, written), 'utf8');
    const page = await openTry();
    const tune = await tuneOnPage();
    let seed = 7;
    for (let round = 0; round < 8; round++) {
      seed = (seed * 31 + 11) % 22;
      await linkAt(page, seed).click();
      const shown = await shownOn(page);
      const slurs = writtenSlurs(tune);
      const joined = [...slurs.joined];
      for (const n of shown.notes.slice(1)) joined[n.event] = n.slurred;
      const abc = editedAbc(tune, withJoins(tune, slurs, joined));
      expect(markdown).toContain(tune.source.text);
      writeFileSync(
        join(book, written),
        markdown.replace(tune.source.text, () => abc),
      );
      const { text } = await explainFile(join(book, written), { json: true });
      const told = JSON.parse(text).tunes.find((t: { id: string }) => t.id === tune.id);
      const [anchor] = told.anchors;
      const leadIn = anchor.leadIns.find((l: { passes: number[] }) => l.passes.includes(1));
      expect(shown.count).toContain(`${leadIn.notes} notes in ${leadIn.strokes} strokes`);
      expect(shown.count).toContain(leadIn.start === 'up' ? 'an up-bow' : 'a down-bow');
      const directions = new Map<string, string>();
      for (const s of told.strokes) {
        for (const n of s.notes)
          if (s.pass === 1) directions.set(n, directions.get(n) ?? s.direction);
      }
      for (const n of shown.notes) {
        const event = tune.events[n.event];
        const id = event?.kind === 'note' ? event.id : '';
        expect(n.direction, id).toBe(directions.get(id));
      }
      const ways = [...new Set(anchor.arrivals.map((a: { direction: string }) => a.direction))];
      expect(shown.arrivals).toHaveLength(ways.length);
      for (const [i, way] of ways.entries()) {
        const agrees = way === 'down' ? 'as it should' : 'the wrong way round';
        expect(shown.arrivals[i]).toContain(`arrives on ${way === 'up' ? 'an up' : 'a down'}-bow`);
        expect(shown.arrivals[i]).toContain(agrees);
      }
    }
    await page.close();
  });

  async function tuneOnPage(): Promise<Tune> {
    const { tunes } = await studyBook(content, () => {});
    const tune = tunes.find(t => t.block.id === 'weighbridge-first-try')?.study?.tune;
    if (!tune) throw new Error('the demo tune was renamed');
    expect(tune.source.text.trim()).toBe(weighbridge.trim());
    return tune;
  }
});

describe('the place to try strokes, from a folder with no network', () => {
  it('loads its script and the tune only when it is opened, and is in nobody’s way before', async () => {
    const page = await demo.browser.newPage({ offline: true });
    const asked: string[] = [];
    const said: string[] = [];
    page.on('request', r => asked.push(r.url()));
    page.on('console', m => said.push(m.text()));
    page.on('pageerror', e => said.push(e.message));
    await openAwake(page, demo.addressOf(lesson));
    expect(asked.filter(u => /assets\/try\.js|tunes\//.test(u))).toEqual([]);
    await page.locator('details.try summary').click();
    await page.waitForSelector('.beads .bead');
    expect(asked.filter(u => /assets\/try\.js$/.test(u))).toHaveLength(1);
    expect(asked.filter(u => /weighbridge-first-try\.js$/.test(u))).toHaveLength(1);
    await linkAt(page, 3).click();
    await page.getByRole('button', { name: 'Show me another way' }).click();
    expect(said).toEqual([]);
    await page.close();
  });

  it('says what one change does, takes it back and does it again', async () => {
    const page = await openTry();
    const before = await shownOn(page);
    expect(before.count).toBe('23 notes in 19 strokes, starting on a down-bow.');
    expect(before.arrivals).toEqual(
      ['The bow arrives on an up-bow, the wrong way round: it should be a down-bow.'].map(
        s => ` ${s}`,
      ),
    );
    await page.getByRole('button', { name: 'Slur F sharp to E, notes 2 and 3 of A4' }).click();
    const after = await shownOn(page);
    expect(after.arrivals).toEqual([' The bow arrives on a down-bow, as it should.']);
    expect(after.said).toBe(
      'Parted: F sharp to E, notes 2 and 3 of A4. Turned round: from note 3 of A4 (E) on.',
    );
    expect(after.status).toContain(after.said);
    expect(after.status).toContain('as it should');
    const at = after.notes.findIndex((n, i) => n.slurred !== before.notes[i]?.slurred);
    after.notes.forEach((n, i) => {
      expect(n.direction === before.notes[i]?.direction).toBe(i < at);
    });
    await page.getByRole('button', { name: 'Undo' }).click();
    expect((await shownOn(page)).notes).toEqual(before.notes);
    await page.getByRole('button', { name: 'Redo' }).click();
    expect((await shownOn(page)).notes).toEqual(after.notes);
    await page.getByRole('button', { name: 'Start again as written' }).click();
    expect((await shownOn(page)).notes).toEqual(before.notes);
    await page.close();
  });

  it('changes phrases that are the same together, unless told not to', async () => {
    const page = await demo.browser.newPage({ offline: true });
    await openAwake(page, demo.addressOf('tunes/the-tide-table.html'));
    await page.locator('details.try summary').click();
    await page.waitForSelector('.beads .bead');
    const first = 'D to B, notes 1 and 2 of B2';
    await page.getByRole('button', { name: `Slur ${first}` }).click();
    expect((await shownOn(page)).said).toContain('notes 1 and 2 of B6');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByLabel('Change phrases that are the same together').uncheck();
    await page.getByRole('button', { name: `Slur ${first}` }).click();
    expect((await shownOn(page)).said).toContain(`Slurred: ${first}.`);
    await page.close();
  });

  it('shows one way after another, each of which arrives, and says what goes past the limits', async () => {
    const page = await openTry();
    const seen = new Set<string>();
    for (let i = 1; i <= 3; i++) {
      await page.getByRole('button', { name: 'Show me another way' }).click();
      const shown = await shownOn(page);
      expect(shown.said).toContain(`Way ${i} of 3: `);
      expect(shown.arrivals.join()).toContain('as it should');
      expect(await page.locator('.try-limits li').count()).toBe(0);
      seen.add(shown.notes.map(n => n.slurred).join());
    }
    expect(seen.size).toBe(3);
    for (const n of [12, 13, 14, 15]) await linkAt(page, n).click();
    expect(await page.locator('.try-limits').textContent()).toContain('more than the 3');
    await page.getByRole('radio', { name: 'beginner' }).check();
    expect(await page.locator('.try-limits').textContent()).toContain('more than the 2');
    await page.close();
  });

  it('is worked by the keyboard alone: one Tab stop, arrows along the chain, Space on a link', async () => {
    const page = await openTry();
    await page.getByRole('radio', { name: 'improver' }).focus();
    await page.keyboard.press('Tab');
    const now = () =>
      page.evaluate(() => {
        const e = document.activeElement as HTMLElement;
        return {
          kind: e.className,
          link: e.dataset.link,
          pressed: e.ariaPressed,
          label: e.querySelector('.unseen')?.textContent,
        };
      });
    expect((await now()).kind).toBe('bead-link');
    await page.keyboard.press('End');
    expect((await now()).label).toMatch(/^D, /);
    await page.keyboard.press('Home');
    expect((await now()).label).toMatch(/^G, .*note 1 of A1$/);
    await page.keyboard.press('ArrowDown');
    expect((await now()).label).toMatch(/note 1 of A2$/);
    await page.keyboard.press('ArrowRight');
    const link = await now();
    expect(link).toMatchObject({ kind: 'bead-link', pressed: 'false' });
    await page.keyboard.press('Space');
    expect(await now()).toMatchObject({ link: link.link, pressed: 'true' });
    await page.keyboard.press('Enter');
    expect(await now()).toMatchObject({ link: link.link, pressed: 'false' });
    await page.keyboard.press('Control+z');
    expect(await now()).toMatchObject({ link: link.link, pressed: 'true' });
    expect(await page.locator('.beads [tabindex="0"]').count()).toBe(1);
    await page.keyboard.press('Tab');
    expect((await now()).kind).not.toMatch(/bead/);
    await page.close();
  });

  it('has links and buttons of 44 px and more, that do not lie over each other, on a phone', async () => {
    const page = await openTry('', { viewport: { width: 360, height: 740 }, hasTouch: true });
    const boxes = await page.evaluate(() =>
      [...document.querySelectorAll('.bead-link, .try-tools button')].map(e => {
        const { x, y, width, height } = e.getBoundingClientRect();
        return { x, y, width, height };
      }),
    );
    expect(boxes.length).toBeGreaterThan(25);
    expect(boxes.filter(b => b.width < 44 || b.height < 44)).toEqual([]);
    const over = boxes.filter((a, i) =>
      boxes.some(
        (b, j) =>
          j > i &&
          Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > 1 &&
          Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > 1,
      ),
    );
    expect(over).toEqual([]);
    await linkAt(page, 3).tap();
    expect((await shownOn(page)).said).toContain('Slurred');
    const wide = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wide).toBe(0);
    await page.close();
  });

  it('draws the slurs and signs of the way in the notation, and none of the teacher’s', async () => {
    const page = await openTry();
    const drawn = () =>
      page.evaluate(() => {
        const room = document.querySelector('.try-room .notation') as HTMLElement;
        return {
          old: room.querySelectorAll('.slurs, .lifted, .layer-marks').length,
          slurs: [...room.querySelectorAll('.own-strokes path:not(.own-signs)')]
            .map(p => p.getAttribute('d')?.match(/M/g)?.length ?? 0)
            .reduce((a, b) => a + b, 0),
        };
      });
    const before = await drawn();
    // Those of A2 and A4, as written; and two in the passage itself.
    expect(before).toEqual({ old: 0, slurs: 4 });
    await linkAt(page, 3).click();
    expect(await drawn()).toEqual({ old: 0, slurs: 5 });
    await page.close();
  });

  it('sounds the way as it is bowed, marks the note that sounds, and falls silent when asked', async () => {
    const page = await openTry();
    await page.getByRole('button', { name: 'Hear it' }).click();
    await page.waitForSelector('.bead.sounding');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.waitForSelector('.bead.sounding', { state: 'detached' });
    expect(await page.getByRole('button', { name: 'Hear it' }).count()).toBe(1);
    await page.close();
  });

  it('is shared as a link that brings back the slurs; a link that is not whole says so', async () => {
    const page = await openTry();
    await linkAt(page, 8).click();
    await linkAt(page, 20).click();
    const shown = await shownOn(page);
    await page.getByRole('button', { name: 'Share' }).click();
    const link = await page.locator('.try-share input').inputValue();
    const hash = link.slice(link.indexOf('#'));
    const other = await openTry(hash);
    expect((await shownOn(other)).notes).toEqual(shown.notes);
    await other.close();
    for (const [bad, says] of [
      [hash.slice(0, hash.lastIndexOf('.')), 'not whole'],
      [hash.replace('=1.', '=9.'), 'later copy'],
      ['#try=1.no-such.abc.AAAA', 'not on this page'],
      ['#try=%E0%', 'not whole'],
    ] as const) {
      await page.goto('about:blank');
      await openAwake(page, demo.addressOf(lesson) + bad);
      expect(await page.locator('main > .notice').first().textContent()).toContain(says);
    }
    const changed = await openTry(hash.replace(/\.[0-9a-z]+\.([^.]+)$/, '.abc.$1'));
    expect((await shownOn(changed)).said).toContain('other notes');
    await changed.close();
    await page.close();
  });

  it('prints a sheet of its own on one page, and leaves the page as it was', async () => {
    const page = await openTry();
    await page.evaluate(() => {
      window.print = () => {};
    });
    await page.getByRole('button', { name: 'Print' }).click();
    const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect([...pdf.matchAll(/\/Type\s*\/Page\b/g)]).toHaveLength(1);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.try-sheet').count()).toBe(0);
    await page.close();
  });

  it('says why it is not there where no scripts run', async () => {
    const context = await demo.browser.newContext({ offline: true, javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(demo.addressOf(lesson));
    await page.locator('details.try summary').click();
    expect(await page.locator('details.try noscript .notice').isVisible()).toBe(true);
    await context.close();
  });
});

describe('axe-core, against WCAG 2.2 AA', () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

  it.each([
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['forced colours', { forcedColors: 'active' }],
  ] as const)('finds nothing in the open place in %s', async (_, look) => {
    const page = await openTry('', { ...look, bypassCSP: true });
    await linkAt(page, 5).click();
    await page.getByRole('button', { name: 'Share' }).click();
    await page.addScriptTag({ content: axe });
    const found = await page.evaluate(async () => {
      const run = (
        globalThis as unknown as { axe: { run(c: string, o: object): Promise<AxeResults> } }
      ).axe.run;
      const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
      const result = await run('details.try', { runOnly: tags, resultTypes: ['violations'] });
      return result.violations.flatMap(v =>
        v.nodes.map(n => `${v.id}: ${n.html} ${n.failureSummary}`),
      );
    });
    expect(found).toEqual([]);
    await page.close();
  });
});

const barsOf = (range: { from: { bar: string }; to: { bar: string } }): string =>
  range.from.bar === range.to.bar ? range.from.bar : `${range.from.bar}-${range.to.bar}`;
