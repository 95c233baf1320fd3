import { join } from 'node:path';
import { build } from 'esbuild';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { editedJoins } from '../../shared/bowing/apply-edit.ts';
import { levels } from '../../shared/bowing/settings.ts';
import type { ArriveDrill, Drill, DrillAsk, DrillKind } from '../../shared/drills/drill.ts';
import { drillKinds } from '../../shared/drills/drill.ts';
import { makeDrill, nextDrill } from '../../shared/drills/make-drill.ts';
import type { Tune } from '../../shared/music/tune.ts';
import type { StudyRequest } from '../../shared/study.ts';
import { drillWords, mendVerdicts } from '../../shared/words/en/drills.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { type Drilled, demoSources } from '../drills/drill-sources.ts';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openAwake } from './open-awake.ts';

const { tellDrill } = wordsFor('en', 'letters');

/** A tune of the demo that gives every kind of drill. */
const tune = 'the-tide-table';

let site: DemoSite;
let sources: Drilled[];
let of: Drilled;
beforeAll(async () => {
  site = await openDemoSite();
  sources = await demoSources();
  of = sources.find(s => s.name === tune) as Drilled;
}, 120_000);
afterAll(() => site?.close());

/** How a student presses a thing. */
type Press = (thing: Locator) => Promise<void>;

const byTouch: Press = thing => thing.tap();
const byKeys: Press = async thing => {
  await thing.focus();
  await thing.press('Enter');
};

const expectSaid = (drill: Locator, words: string): Promise<void> =>
  drill.getByRole('status').filter({ hasText: words }).waitFor({ timeout: 5000 });

const firstDrill = (kind: DrillKind): Drill => {
  const { level } = of.request.bowing;
  const { drill } = makeDrill(of.source, { kind, level, seed: 1, to: null });
  if (!drill) throw new Error(`${tune} gives no ${kind}`);
  return drill;
};

async function openKind(page: Page, kind: DrillKind, press: Press): Promise<Locator> {
  const section = page.locator(`.drill[data-drill="${kind}"]`);
  await press(page.locator('.drill-fold', { has: section }).locator('summary').first());
  await section.getByRole('button', { name: drillWords.another }).waitFor();
  return section;
}

/** Answers wrongly, then rightly, and sees that each is said. */
async function answer(section: Locator, drill: Drill, press: Press): Promise<void> {
  const told = tellDrill(of.source, drill, 'letters');
  const fold = section.locator('.drill-answer');
  expect(await fold.isVisible()).toBe(false);
  if (drill.kind === 'gaps') await fillGaps(section, drill, press);
  else if (drill.kind === 'arrive') await mend(section, drill, press);
  else {
    for (const [i, item] of told.items.entries()) {
      const buttons = section.getByRole('group').nth(i).getByRole('button');
      expect(await buttons.count()).toBe(item.choices.length);
      const wrong = item.right === 0 ? 1 : 0;
      await press(buttons.nth(wrong));
      await expectSaid(section, `${drillWords.wrong} ${item.choices[wrong]?.not}`);
      await press(buttons.nth(item.right));
      await expectSaid(section, drillWords.right);
    }
  }
  await expectSaid(section, told.why);
  expect(await fold.isVisible()).toBe(true);
  await press(fold.locator('summary'));
  for (const line of told.answer) {
    await fold.getByText(line, { exact: true }).first().waitFor({ timeout: 5000 });
  }
}

async function fillGaps(
  section: Locator,
  drill: Extract<Drill, { kind: 'gaps' }>,
  press: Press,
): Promise<void> {
  const fills = section.locator('select');
  expect(await fills.count()).toBe(drill.gaps.length);
  const check = section.getByRole('button', { name: drillWords.check });
  for (const [i, right] of drill.right.entries()) {
    await fills.nth(i).selectOption(String(right === 0 ? 1 : 0));
  }
  await press(check);
  await expectSaid(section, drillWords.gapsLeft(0, drill.gaps.length));
  for (const [i, right] of drill.right.entries()) {
    if (press === byTouch) await fills.nth(i).selectOption(String(right));
    else {
      await fills.nth(i).focus();
      await fills.nth(i).press('Home');
      for (let k = 0; k <= right; k++) await fills.nth(i).press('ArrowDown');
    }
  }
  await press(check);
}

async function mend(section: Locator, drill: ArriveDrill, press: Press): Promise<void> {
  const check = section.getByRole('button', { name: drillWords.check });
  await press(check);
  await expectSaid(section, mendVerdicts.nothing);
  const edit = drill.mends.find(m => m.kind !== 'retake');
  if (!edit) throw new Error('no mend by a slur');
  const before: boolean[] = [];
  drill.notes.forEach((e, i) => {
    before[e] = drill.joined[i] === true;
  });
  const after = editedJoins(before, edit);
  const turned = drill.notes.flatMap((e, i) =>
    i > 0 && before[e] !== (after[e] === true) ? [i] : [],
  );
  const links = section.locator('.bead-cell');
  for (const i of turned) await press(links.nth(i).locator('.link'));
  await press(check);
  await expectSaid(section, mendVerdicts.mends);
}

describe('drills on the page of a tune, opened from its folder', () => {
  for (const [how, press] of [
    ['by touch', byTouch],
    ['by keyboard', byKeys],
  ] as const) {
    it(`asks every kind, wrong and right, ${how}`, { timeout: 120_000 }, async () => {
      const context = await site.browser.newContext({
        offline: true,
        hasTouch: true,
        viewport: { width: 360, height: 740 },
      });
      const page = await context.newPage();
      const said: string[] = [];
      const asked: string[] = [];
      page.on('pageerror', e => said.push(e.message));
      page.on('console', m => {
        if (m.type() === 'error') said.push(m.text());
      });
      page.on('request', r => asked.push(r.url()));
      await openAwake(page, site.addressOf(`tunes/${tune}.html`));
      const kept = () => page.evaluate(() => JSON.stringify({ ...localStorage }));
      const before = await kept();
      for (const kind of drillKinds) {
        const section = await openKind(page, kind, press);
        await answer(section, firstDrill(kind), press);
      }
      expect(said).toEqual([]);
      expect(asked.filter(url => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
      // No score is kept.
      expect(await kept()).toBe(before);
      await context.close();
    });
  }

  it('goes on to another, a harder and an easier one, and each is the one that Node makes', {
    tags: ['slow'],
    timeout: 60_000,
  }, async () => {
    const page = await site.browser.newPage();
    await openAwake(page, site.addressOf(`tunes/${tune}.html`));
    for (const kind of drillKinds) {
      const section = await openKind(page, kind, thing => thing.click());
      const shows = async (drill: Drill): Promise<void> => {
        const told = tellDrill(of.source, drill, 'letters');
        const question = await section.locator('.drill-question p').allTextContents();
        expect(question).toEqual(told.question);
        expect(await section.locator('.drill-level').textContent()).toContain(told.levelSays);
        expect(await section.locator('.drill-ask').allTextContents()).toEqual([
          ...told.chains.flatMap(c => c.name ?? []),
          ...(kind === 'gaps' ? [] : told.items.map(i => i.ask)),
        ]);
      };
      let drill = firstDrill(kind);
      await shows(drill);
      for (let i = 0; i < 3; i++) {
        await section.getByRole('button', { name: drillWords.another }).click();
        drill = nextDrill(of.source, drill);
        await shows(drill);
      }
      const at = (level: Drill['level']): Drill =>
        makeDrill(of.source, { kind, level, seed: drill.seed, to: null }).drill as Drill;
      await section.getByRole('button', { name: drillWords.harder }).click();
      await shows(at('advanced'));
      await section.getByRole('button', { name: drillWords.easier }).click();
      await section.getByRole('button', { name: drillWords.easier }).click();
      await shows(at('beginner'));
    }
    await page.close();
  });

  it('sounds what can be heard, and stops when asked or when another is asked', {
    tags: ['slow'],
  }, async () => {
    const page = await site.browser.newPage();
    const said: string[] = [];
    page.on('pageerror', e => said.push(e.message));
    await openAwake(page, site.addressOf(`tunes/${tune}.html`));
    for (const kind of ['call', 'gaps', 'count', 'same', 'forks'] as const) {
      const section = await openKind(page, kind, thing => thing.click());
      await section.getByRole('button', { name: drillWords.listen }).click();
      await section.getByRole('button', { name: drillWords.stop }).click();
      await section.getByRole('button', { name: drillWords.listen }).click();
      await section.getByRole('button', { name: drillWords.stop }).waitFor();
      await section.getByRole('button', { name: drillWords.another }).click();
      await section.getByRole('button', { name: drillWords.listen }).waitFor();
    }
    const silent = await openKind(page, 'arrive', thing => thing.click());
    expect(await silent.getByRole('button', { name: drillWords.listen }).isVisible()).toBe(false);
    expect(said).toEqual([]);
    await page.close();
  });

  it('without script, shows every question and folds its answer out', async () => {
    const context = await site.browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(site.addressOf(`tunes/${tune}.html`));
    for (const kind of drillKinds) {
      const section = page.locator(`.drill[data-drill="${kind}"]`);
      await page.locator('.drill-fold', { has: section }).locator('summary').first().click();
      const told = tellDrill(of.source, firstDrill(kind), 'letters');
      expect(await section.getByText(told.question[0] ?? '').isVisible()).toBe(true);
      const why = section.locator('.drill-answer').getByText(told.why);
      expect(await why.isVisible()).toBe(false);
      await section.locator('.drill-answer summary').click();
      expect(await why.isVisible()).toBe(true);
    }
    await context.close();
  });

  it('has controls of 44 px and never scrolls sideways at 320 px', async () => {
    const page = await site.browser.newPage({ viewport: { width: 320, height: 700 } });
    await openAwake(page, site.addressOf(`tunes/${tune}.html`));
    for (const kind of drillKinds) await openKind(page, kind, thing => thing.click());
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.drill button, .drill select, .drill summary')].flatMap(e => {
        const { width, height } = e.getBoundingClientRect();
        return width === 0 || (width >= 44 && height >= 44)
          ? []
          : [`${e.className} ${width} × ${height}`];
      }),
    );
    expect(small).toEqual([]);
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBeLessThanOrEqual(0);
    await page.close();
  });
});

it('the same seed gives the same drill in Node and in the browser, byte for byte', {
  tags: ['slow'],
  timeout: 60_000,
}, async () => {
  const bundle = await build({
    entryPoints: [join(import.meta.dirname, 'drills-page.ts')],
    bundle: true,
    format: 'iife',
    write: false,
  });
  const page = await site.browser.newPage();
  await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' });
  const asks: DrillAsk[] = drillKinds.flatMap(kind =>
    levels.flatMap(level => [1, 2, 3, 4, 5].map(seed => ({ kind, level, seed, to: null }))),
  );
  for (const { source, request, name } of sources) {
    const inBrowser = await page.evaluate(
      ([t, r, a]) =>
        (
          globalThis as unknown as {
            drillsAsJson: (t: Tune, r: StudyRequest, a: readonly DrillAsk[]) => string;
          }
        ).drillsAsJson(t as Tune, r as StudyRequest, a as readonly DrillAsk[]),
      [source.tune, request, asks] as const,
    );
    expect(inBrowser, name).toBe(JSON.stringify(asks.map(ask => makeDrill(source, ask))));
  }
  await page.close();
});
