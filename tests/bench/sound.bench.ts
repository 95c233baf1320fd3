import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { fraction } from '../../shared/music/fraction.ts';
import { liltAt, liltRange } from '../../shared/sound/lilt.ts';
import { passagesOf } from '../../shared/sound/passage.ts';
import { soundPassage } from '../../shared/sound/sound-passage.ts';
import type { SoundingPassage } from '../../shared/sound/sounding.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { startChromium } from '../browser/chromium.ts';
import { renderWhole } from '../sound/render-whole.ts';
import { ms } from './timing.ts';

const root = process.cwd();
const { tunes } = await studyBook('content', () => {});
const study = tunes.find(t => t.study?.tune.type === 'reel')?.study;
if (!study) throw new Error('the demo book has a reel');
const [whole] = passagesOf(study, { kind: 'all' });
if (!whole) throw new Error('the reel is played');

/** The whole reel, at the tempo at which it lasts 64 seconds. */
const beats = (whole.to.n / whole.to.d) * 2;
const reel: SoundingPassage = soundPassage(study, whole, {
  tempo: { beat: fraction(1, 2), perMinute: (beats * 60) / 64 },
  lilt: liltAt(liltRange(study.tune), 1.15),
  breath: 0,
  answer: false,
  pulse: true,
});

console.log(`Sound: ${study.tune.title}, ${reel.strokes.length} strokes, ${reel.length} s of it`);
for (let i = 0; i < 2; i++) renderWhole(reel, 44_100);
const inNode = leastTime(() => renderWhole(reel, 44_100));
/** What any rendering costs at least: one sine a sample. */
const sine = leastTime(() => {
  const out = new Float32Array(64 * 44_100);
  for (let i = 0; i < out.length; i++) out[i] = Math.sin(i * 0.0627);
  return out;
});
console.log(
  `  in Node: ${ms(inNode)}, ${(inNode / sine).toFixed(1)} times a plain sine of that length`,
);

type Timed = {
  timeRendering(p: SoundingPassage): number;
  timeOscillator(s: number): Promise<number>;
};
const bundle = await build({
  entryPoints: [join(root, 'tests/bench/sound-page.ts')],
  bundle: true,
  format: 'iife',
  write: false,
});
const browser = await startChromium();
for (const slowdown of [1, 4]) {
  const page = await browser.newPage();
  await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' });
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  const time = (): Promise<number> =>
    page.evaluate(p => (globalThis as unknown as Timed).timeRendering(p), reel);
  const cold = await time();
  const [times, references]: [number[], number[]] = [[], []];
  for (let i = 0; i < 5; i++) {
    times.push(await time());
    references.push(
      await page.evaluate(s => (globalThis as unknown as Timed).timeOscillator(s), reel.length),
    );
  }
  const [warm, reference] = [Math.min(...times), Math.min(...references)];
  console.log(
    `  in Chromium, ${slowdown} × slower: ${ms(warm)} (first time ${ms(cold)}), ${(warm / reference).toFixed(1)} times the browser’s own sawtooth (${ms(reference)}, not slowed)`,
  );
  await page.close();
}
await browser.close();

const script = await build({
  entryPoints: ['page', 'player'].map(name => join(root, `src/browser/${name}.ts`)),
  outdir: 'unused',
  bundle: true,
  minify: true,
  format: 'iife',
  target: 'es2020',
  write: false,
});
const sizes = script.outputFiles.map(f => gzipSync(f.contents).length / 1024);
console.log(
  `  scripts of a lesson page: ${sizes.map(s => `${s.toFixed(1)} KB`).join(' + ')} gzipped`,
);

/** Least milliseconds of five calls: what else the machine does can only add to them. */
function leastTime(work: () => unknown): number {
  return Math.min(
    ...Array.from({ length: 5 }, () => {
      const began = performance.now();
      work();
      return performance.now() - began;
    }),
  );
}
