import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bowingContext } from '../../shared/bowing/lead-in-of.ts';
import { proposeBowings } from '../../shared/bowing/propose-bowings.ts';
import { tuneOf } from '../bowing/strokes-of.ts';
import { anchorAt, studyOf } from '../bowing/study-of.ts';
import { medianTime, ms } from './timing.ts';

/** A reel of n quavers in parts of 64, each repeated, with anchors on two bars of every part. */
function reel(notes: number) {
  const bars = ['DFAd fdAF', 'GBdg bgdB', 'Acea geca', 'fdAF EFGE', 'D2FA d2fd', 'e2ce A2ce'];
  const part = (p: number): string =>
    `|:${Array.from({ length: 8 }, (_, b) => bars[(p * 5 + b * (b > 3 ? 1 : 2)) % 6]).join('|')}:|`;
  const parts = Array.from({ length: notes / 64 }, (_, p) => part(p));
  return tuneOf(`X:1\nT:Bench\nR:reel\nM:4/4\nL:1/8\nK:D\n${parts.join('\n')}`);
}

console.log('Three whole bowings, two anchors and a repeat in every 64 notes');
function proposing(notes: number): () => unknown {
  const tune = reel(notes);
  const names = tune.parts.map(part => part.name);
  const anchors = names.flatMap(name => [
    { ...anchorAt(`${name}3`, 'up'), id: `${name}3` },
    { ...anchorAt(`${name}8`, 'down'), id: `${name}8` },
  ]);
  const { performance, fingering, map, bowing } = studyOf(tune, { anchors });
  const request = {
    start: null,
    anchors: bowing.anchors,
    preset: null,
    level: 'improver',
  } as const;
  return () => {
    const context = bowingContext(tune, performance, fingering, map, defaultBowing);
    return proposeBowings(context, request);
  };
}
const warm = proposing(64);
for (let i = 0; i < 100; i++) warm(); // until it is compiled
const whole = medianTime(warm);
for (const n of [64, 128, 256, 512, 1024]) {
  const time = medianTime(proposing(n));
  console.log(
    `  ${n} notes: ${ms(time)}, per note ${(time / whole / (n / 64)).toFixed(2)} of 64 notes'`,
  );
}
