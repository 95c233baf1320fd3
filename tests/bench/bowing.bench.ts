import { join } from 'node:path';
import type { LeadInModel } from '../../shared/bowing/lead-in-model.ts';
import { bestBowings, countBowings } from '../../shared/bowing/plan-lead-in.ts';
import { studyTune } from '../../shared/study.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { everyBowing } from '../bowing/every-bowing.ts';
import { medianTime, ms } from './timing.ts';

/** n quavers of a reel, slurs of up to four, a slur rough at every fifth junction. */
const leadIn = (n: number): LeadInModel => ({
  notes: n,
  start: 'down',
  arrive: 'up',
  written: Array.from({ length: n - 1 }, (_, j) => j % 7 !== 3),
  slurrable: Array.from({ length: n - 1 }, (_, j) => j % 11 !== 5),
  lengths: Array.from({ length: n }, () => 1),
  longestSlur: 4,
  longestStroke: 6,
  strong: Array.from({ length: n }, (_, i) => i % 4 === 0),
  onBeat: Array.from({ length: n }, (_, i) => i % 2 === 0),
  rough: Array.from({ length: n - 1 }, (_, j) => Number(j % 5 === 2)),
  strongBeat: 'down',
  intoBeat: true,
});

console.log('Bowing: the ten best of a lead-in');
for (let i = 0; i < 200; i++) bestBowings(leadIn(64), 10); // until it is compiled
const base = medianTime(() => bestBowings(leadIn(64), 10));
for (const n of [64, 128, 256, 512, 1024]) {
  const form = leadIn(n);
  const best = medianTime(() => bestBowings(form, 10));
  const count = medianTime(() => countBowings(form));
  const growth = (best / base / (n / 64)).toFixed(2);
  console.log(`  ${n} notes: ${ms(best)}, counts ${ms(count)}, per note ${growth} of 64 notes'`);
}
for (const n of [8, 12, 16]) {
  const form = leadIn(n);
  const planned = medianTime(() => bestBowings(form, 10));
  const enumerated = medianTime(() => everyBowing(form), 5);
  console.log(
    `  ${n} notes: ${(enumerated / planned).toFixed(1)} times as fast as trying every bowing`,
  );
}

console.log('A whole study of each demo tune, when warm');
const { tunes } = await studyBook(join(process.cwd(), 'content'), () => {});
for (const { study, request } of tunes) {
  if (study === null) continue;
  const time = medianTime(() => studyTune(study.tune, request), 9);
  console.log(`  ${study.tune.title}: ${ms(time)} (${request.anchors.length} anchors)`);
}
