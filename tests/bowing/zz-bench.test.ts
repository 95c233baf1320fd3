import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bestBowings } from '../../shared/bowing/plan-lead-in.ts';
import { studyBowing } from '../../shared/bowing/study-bowing.ts';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { parsePitch } from '../../shared/music/pitch.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { plainForm } from './forms.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

const time = (name: string, f: () => void, n = 30) => {
  for (let i = 0; i < n; i++) f();
  const t = performance.now();
  for (let i = 0; i < n; i++) f();
  console.log(name, ((performance.now() - t) / n).toFixed(2), 'ms');
};
test('bench', () => {
  for (const n of [64, 128, 256, 512, 1024])
    time(`ten best of ${n}`, () => bestBowings(plainForm(n), 10));
  const t = tuneOf(`X:1
T:The Test Bench
R:reel
M:4/4
L:1/8
K:D
|:D2FA dAFA|BAGF EDCE|DEFA dfed|cAGE D4:|
|:fdAd fgaf|gfed cAGE|fdAd fgaf|edce dBcd|dBAF GBdB|AFDF EDCB,|DFAd fedc|d8:|`);
  const tuning = ['E5', 'A4', 'D4', 'G3'].map(parsePitch) as never;
  const pf = playedOrder(t),
    map = mapSections(t),
    fg = assignFingers(t, tuning).fingering;
  const anchors = [anchorAt('B7-B8', 'up')];
  time('bowing missed', () =>
    studyBowing(t, pf, fg, map, { bowing: defaultBowing, start: null, anchors }),
  );
  time('bowing hit', () =>
    studyBowing(t, pf, fg, map, {
      bowing: defaultBowing,
      start: null,
      anchors: [anchorAt('B7-B8', 'down')],
    }),
  );
  time('bowing none', () =>
    studyBowing(t, pf, fg, map, { bowing: defaultBowing, start: null, anchors: [] }),
  );
  time('study', () => studyOf(t, { anchors }));
  const times: [number, string][] = [];
  const rules: Record<string, number> = {};
  for (const f of readdirSync('../shared/corpus').filter(f => f.endsWith('.abc'))) {
    const { tunes } = parseTunes({
      text: readFileSync(`../shared/corpus/${f}`, 'utf8'),
      file: f,
      line: 1,
      indent: 0,
    });
    for (const tune of tunes) {
      const b = tune.bars.filter(b => b.end > b.first).at(-2)?.name;
      const a = b && !b.includes('/') ? [anchorAt(b, 'up')] : [];
      const s = performance.now();
      const st = studyOf(tune, { anchors: a });
      times.push([performance.now() - s, `${f} ${tune.title}`]);
      for (const p of st.problems) rules[p.rule] = (rules[p.rule] ?? 0) + 1;
    }
  }
  times.sort((a, b) => b[0] - a[0]);
  console.log(
    times.length,
    'mean',
    times.reduce((s, t) => s + t[0], 0) / times.length,
    times.slice(0, 5),
    times[times.length >> 1],
    rules,
  );
}, 300000);
