import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { openPreview } from '../../src/preview/open-preview.ts';
import { startChromium } from '../browser/chromium.ts';
import { whichTunes } from './bench-tunes.ts';
import { lessonFile, writeBigBook } from './big-book.ts';

/** Tunes of the book; `BOWBOOK_BENCH_PREVIEW` makes it smaller. */
const count = Number(process.env.BOWBOOK_BENCH_PREVIEW ?? 300);
const saves = 9;
const quiet = { progress: () => {}, onBuild: () => {} };
const onDefect = (error: unknown): never => {
  throw error;
};

/** Milliseconds from the end of a save to when the page shows it, as the page sees the clock. */
async function follow(page: Page, file: string, word: string): Promise<number> {
  const seen = page.evaluate(
    wanted =>
      new Promise<number>(resolve => {
        const look = (): void => {
          if (document.querySelector('main')?.textContent?.includes(wanted)) resolve(Date.now());
          else requestAnimationFrame(look);
        };
        look();
      }),
    word,
  );
  const text = readFileSync(file, 'utf8').replace(
    /\nWhat we did\.[^\n]*\n/,
    `\nWhat we did. ${word}\n`,
  );
  writeFileSync(file, text);
  const saved = Date.now();
  return (await seen) - saved;
}

const work = mkdtempSync(join(tmpdir(), 'bowbook-bench-'));
const root = join(work, 'book');
writeBigBook(root, count);
const file = lessonFile(root, 2);
console.log(
  `Preview: a book of ${count} ${whichTunes}; a lesson is saved, the page that shows it follows`,
);
const began = performance.now();
const all = { root, out: join(work, 'site'), isPrivate: true, isQuick: true, progress: () => {} };
await buildSite(all);
const whole = performance.now() - began;
const preview = await openPreview({
  root,
  folder: join(work, 'preview'),
  port: 0,
  onDefect,
  ...quiet,
});
await preview.firstBuild;
const browser = await startChromium();
const page = await browser.newPage();
await page.goto(`${preview.address}lessons/${file.slice(file.lastIndexOf('/') + 1, -3)}.html`);
await page.getByText('What we did.').waitFor();
const times: number[] = [];
for (let i = 0; i < saves + 1; i++) times.push(await follow(page, file, `word${i}`));
const [first = 0, ...rest] = times;
const sorted = rest.toSorted((a, b) => a - b);
const median = sorted[Math.floor(sorted.length / 2)] ?? 0;
console.log(
  `  from the save to the page: ${first} ms the first time, then ${median} ms (${sorted[0]} to ${sorted.at(-1)}); the whole book anew ${(whole / 1000).toFixed(1)} s: ${(median / whole).toFixed(3)} of it`,
);
await browser.close();
await preview.close();
rmSync(work, { recursive: true, force: true });
