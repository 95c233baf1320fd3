import { beforeAll, expect, test } from 'vitest';
import { pacesOf } from '../../shared/bowing/paces.ts';
import { heardStretches } from '../../shared/drills/heard-stretches.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import { liltAt, liltRange } from '../../shared/sound/lilt.ts';
import { silenceNotes } from '../../shared/sound/silence-notes.ts';
import { soundPassage } from '../../shared/sound/sound-passage.ts';
import { renderWhole } from '../sound/render-whole.ts';
import { type Drilled, demoSources } from './drill-sources.ts';

let sources: Drilled[];
beforeAll(async () => {
  sources = await demoSources();
}, 60_000);

test('a gap is silent, and what stands beside it is heard', () => {
  const rate = 8000;
  let gaps = 0;
  for (const { source, name } of sources.slice(0, 6)) {
    const { drill } = makeDrill(source, { kind: 'gaps', level: 'advanced', seed: 3, to: null });
    const [stretch] = drill ? heardStretches(source, drill) : [];
    if (!stretch) continue;
    expect(stretch.silent.length, name).toBeGreaterThan(0);
    const { beat, perMinute } = pacesOf(source.tune, source.settings);
    const lilt = liltAt(liltRange(source.tune), liltRange(source.tune).usual);
    const tempo = { beat, perMinute: perMinute.learning };
    const whole = soundPassage(source, stretch, {
      tempo,
      lilt,
      breath: 1,
      answer: false,
      pulse: false,
    });
    const silent = new Set(stretch.silent);
    const samples = renderWhole(silenceNotes(whole, silent), rate);
    // Its middle, where neither the ring of the note before nor the attack of the next reaches.
    const loudness = (from: number, to: number): number => {
      const [a, b] = [from + (to - from) * 0.6, from + (to - from) * 0.9];
      let sum = 0;
      for (let i = Math.round(a * rate); i < b * rate; i++) sum += (samples[i] ?? 0) ** 2;
      return Math.sqrt(sum / Math.max(1, (b - a) * rate));
    };
    for (const n of whole.notes) {
      const loud = loudness(n.at, n.until);
      if (silent.has(n.note)) {
        gaps++;
        expect(loud, `${name} note ${n.note}`).toBeLessThan(0.005);
      } else expect(loud, `${name} note ${n.note}`).toBeGreaterThan(0.01);
    }
  }
  expect(gaps).toBeGreaterThan(20);
});

test('nothing is heard of a drill whose answer it would give away', () => {
  for (const { source } of sources) {
    for (const kind of ['start', 'arrive', 'into'] as const) {
      const { drill } = makeDrill(source, { kind, level: 'improver', seed: 1, to: null });
      if (drill) expect(heardStretches(source, drill)).toEqual([]);
    }
  }
});
