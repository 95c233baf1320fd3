import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { limits } from '../../shared/limits.ts';
import { studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { ms } from './timing.ts';

/** How long the largest tunes that are read take, each with two anchors, beside an ordinary one. */
const head = 'X:1\nT:Long\nM:4/4\nL:1/8\nK:D\n';
let last = 1;
const letter = (): string => {
  last = (last * 1103515245 + 12345) & 0x7fffffff;
  return 'DEFGABcdefga'[(last >> 8) % 12] ?? 'A';
};
const bar = (): string => Array.from({ length: 8 }, letter).join('');
const lines = (count: number, make: () => string): string =>
  Array.from({ length: count }, (_, i) => make() + (i % 8 === 7 ? '\n' : '')).join('');
const full = Math.floor(limits.notes / 8);

const tunes: Readonly<Record<string, string>> = {
  'an ordinary tune': head + lines(32, () => `${bar()}|`),
  'as many notes as may be': head + lines(full, () => `${bar()}|`),
  'each bar with a mark that disagrees': head + lines(full, () => `v${bar().slice(1)}|`),
  'each bar repeated': head + lines(full, () => `|:${bar()}:|`),
  'slurs in each bar': head + lines(full, () => `(${bar().replace(/^.../, '$&)')}|`),
  'parts played as often as may be': `${head.replace('K:', 'P:(AB)40\nK:')}P:A\n${lines(30, () => `${bar()}|`)}\nP:B\n${lines(30, () => `${bar()}|`)}`,
};

console.log('The largest tunes: reading and study');
let ordinary = 0;
for (const [what, text] of Object.entries(tunes)) {
  const work = (): number => {
    const [tune] = parseTunes({ text, file: 'long.abc', line: 1, indent: 0 }).tunes;
    if (!tune) throw new Error(`${what} is not read`);
    const names = [tune.bars.at(-1), tune.bars[tune.bars.length >> 1]].map(b => b?.name ?? '');
    const anchors = names.map((name, i) => ({
      id: `a${i}`,
      bars: { from: { bar: name, note: null }, to: { bar: name, note: null } },
      start: 'up' as const,
      level: null,
      preset: null,
      asked: [],
      place: null,
    }));
    const request = {
      tuning: fiddleTuning,
      bowing: defaultBowing,
      start: null,
      anchors,
      unit: null,
    };
    return studyTune(tune, request).performance.notes.length;
  };
  work();
  const began = performance.now();
  const played = work();
  const time = performance.now() - began;
  ordinary ||= time;
  const ratio = (time / ordinary).toFixed(0);
  console.log(`  ${what}: ${played} notes played, ${ms(time)}, ${ratio} times an ordinary tune`);
}
