import { join } from 'node:path';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { type StudyRequest, studyTune } from '../../shared/study.ts';
import { studyJson } from '../../src/export/study-json.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { startChromium } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser?.close());

describe('the engine', () => {
  it('says the same, byte for byte, in Node twice and in the browser', async () => {
    const bundle = await build({
      entryPoints: [join(import.meta.dirname, 'engine-page.ts')],
      bundle: true,
      format: 'iife',
      write: false,
    });
    const page = await browser.newPage();
    await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' });
    const { tunes } = await studyBook(join(import.meta.dirname, '../../content'), () => {});
    expect(tunes.length).toBeGreaterThan(9);
    for (const { study, request } of tunes) {
      if (study === null) throw new Error('a demo tune was not read');
      const inNode = () => {
        const again = studyTune(study.tune, request);
        return JSON.stringify(studyJson([again], again.problems));
      };
      const first = inNode();
      expect(inNode()).toBe(first);
      const inBrowser = await page.evaluate(
        ([tune, asked]) =>
          (
            globalThis as unknown as { studyAsJson: (t: Tune, r: StudyRequest) => string }
          ).studyAsJson(tune as Tune, asked as StudyRequest),
        [study.tune, request] as const,
      );
      expect(inBrowser, study.tune.id).toBe(first);
    }
    await page.close();
  });
});
