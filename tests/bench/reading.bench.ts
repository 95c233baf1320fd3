import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { benchTunes, whichTunes } from './bench-tunes.ts';
import { medianTime, ms } from './timing.ts';

/** Bars that come back in another order, as a tune's do. */
const bars = ['DFAF d2AF', 'GBAG FDEF', 'DFAF dABc', 'dAFE D2FE', 'fdAd fagf', 'ecAc efge'];

/** A reel of `parts` parts of eight bars, each repeated. */
const reel = (parts: number): string => {
  const part = (p: number): string =>
    Array.from({ length: 8 }, (_, i) => bars[(i * i * (p + 1) + 5 * p + i) % bars.length]).join(
      '|',
    );
  const body = Array.from({ length: parts }, (_, p) => `|:${part(p)}:|`).join('\n');
  return `X:1\nT:Long\nM:4/4\nL:1/8\nR:reel\nK:D\n${body}\n`;
};

const read = (text: string) => parseTunes({ text, file: 'bench.md', line: 1, indent: 0 }).tunes;

console.log('Reading and mapping: growth with the length of a tune');
for (let i = 0; i < 100; i++) read(reel(2)).map(tune => mapSections(tune)); // until it is compiled
let [readBase, mapBase] = [0, 0];
for (const parts of [2, 4, 8, 16, 32]) {
  const abc = reel(parts);
  const [tune] = read(abc);
  if (!tune) throw new Error('the benchmark’s tune is not read');
  const reading = medianTime(() => read(abc), 9);
  const mapping = medianTime(() => mapSections(tune), 9);
  const fingering = medianTime(() => assignFingers(tune, fiddleTuning), 9);
  if (parts === 2) [readBase, mapBase] = [reading, mapping];
  const per = (time: number, base: number): string => (time / base / (parts / 2)).toFixed(2);
  console.log(
    `  ${parts * 8} bars: read ${ms(reading)}, map ${ms(mapping)}, fingers ${ms(fingering)}; ` +
      `a bar's share ${per(reading, readBase)} and ${per(mapping, mapBase)} of 16 bars'`,
  );
}

const time = <T>(work: () => T): readonly [T, number] => {
  const began = performance.now();
  const result = work();
  return [result, performance.now() - began];
};
const [tunes, reading] = time(() => benchTunes.flatMap(read));
const [, playing] = time(() => tunes.map(playedOrder));
const [, mapping] = time(() => tunes.map(tune => mapSections(tune)));
const [, fingering] = time(() => tunes.map(tune => assignFingers(tune, fiddleTuning)));
const each = (t: number): string => `${ms(t)} (${(t / tunes.length).toFixed(3)} ms a tune)`;
console.log(`${tunes.length} ${whichTunes}, each once`);
console.log(`  read ${each(reading)}, played order ${each(playing)}`);
console.log(`  map ${each(mapping)}, fingers ${each(fingering)}`);
