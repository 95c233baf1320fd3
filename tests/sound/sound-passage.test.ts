import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { pacesOf } from '../../shared/bowing/paces.ts';
import { fraction } from '../../shared/music/fraction.ts';
import { climbedTo } from '../../shared/sound/climb.ts';
import { liltRange } from '../../shared/sound/lilt.ts';
import { passagesOf } from '../../shared/sound/passage.ts';
import { soundLength } from '../../shared/sound/render-sound.ts';
import { countIn } from '../../shared/sound/sound-passage.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { anchorAt } from '../bowing/study-of.ts';
import { levelAt, rate } from './listen.ts';
import { renderWhole } from './render-whole.ts';
import { liltOf, onsetsOf, soundOf, studyAbc } from './sound-of.ts';

const reel = 'R:reel\nM:4/4\nL:1/8\nK:D';
const jig = 'R:jig\nM:6/8\nL:1/8\nK:D';
const hornpipe = 'R:hornpipe\nM:4/4\nL:1/8\nK:D';

const near = (list: readonly number[], wanted: readonly number[]): void => {
  expect(list.length).toBe(wanted.length);
  list.forEach((x, i) => {
    expect(x).toBeCloseTo(wanted[i] ?? Number.NaN, 8);
  });
};

describe('tempo', () => {
  it('is exact to the sample: every stroke begins where the beat says, at every speed', () => {
    const study = studyAbc(reel, 'DEFG ABcd|efga gfed|');
    for (let perMinute = 15; perMinute <= 126; perMinute += 3.7) {
      const sounding = soundOf(study, { tempo: { beat: fraction(1, 2), perMinute } });
      const quaver = 60 / perMinute / 4;
      sounding.strokes.forEach((s, i) => {
        expect(Math.round(s.from * rate)).toBe(Math.round(i * quaver * rate));
      });
      expect(soundLength(sounding, rate)).toBe(Math.round(16 * quaver * rate));
    }
  });

  it('is heard in the samples: a tick a second stands a second apart, within a sample', () => {
    const sounding = { ...soundOf(studyAbc(reel, 'z8|'), { pulse: true }), strokes: [] };
    const samples = renderWhole(sounding, rate);
    const starts: number[] = [];
    for (let i = 0; i < samples.length; i++) {
      if (Math.abs(samples[i] ?? 0) > 1e-4 && i - (starts.at(-1) ?? -1e5) > rate / 2)
        starts.push(i);
    }
    expect(starts.length).toBe(4);
    starts.slice(1).forEach((at, i) => {
      expect(Math.abs(at - (starts[i] ?? 0) - rate)).toBeLessThanOrEqual(1);
    });
  });

  it('climbs by steps to its goal, and never comes down to it', () => {
    const climb = { by: 3, every: 2, to: 55 };
    expect([0, 1, 2, 3, 4, 5, 9].map(n => climbedTo(50, climb, n))).toEqual([
      50, 50, 53, 53, 55, 55, 55,
    ]);
    expect(climbedTo(80, climb, 9)).toBe(80);
    expect(climbedTo(50, null, 9)).toBe(50);
  });

  it('is the book’s practice tempo of the type; the metre’s own beat where there is none', () => {
    const { tune } = studyAbc(reel, 'DEFG ABcd|');
    expect(pacesOf(tune, defaultBowing).perMinute.learning).toBe(defaultBowing.tempi.reel.learning);
    expect(pacesOf(tune, defaultBowing).beat).toEqual(fraction(1, 2));
    const untyped = studyAbc('M:6/8\nL:1/8\nK:D', 'DEF FED|').tune;
    expect(pacesOf(untyped, defaultBowing).beat).toEqual(fraction(3, 8));
  });
});

describe('lilt', () => {
  it('makes pairs long and short in exactly the ratio asked for', () => {
    const study = studyAbc(hornpipe, 'DEFG A2 d2|');
    for (const ratio of [1, 1.25, 1.5, 1.75, 2, 2.5]) {
      const long = ratio / (1 + ratio);
      near(onsetsOf(soundOf(study, { lilt: liltOf(study, ratio) })), [0, long, 1, 1 + long, 2, 3]);
    }
  });

  it('leaves written dots and triplets alone, and eases dots where asked', () => {
    const study = studyAbc(hornpipe, 'D>E (3FGA B<c d2|');
    const third = 1 / 3;
    const written = [0, 0.75, 1, 1 + third, 1 + 2 * third, 2, 2.25, 3];
    near(onsetsOf(soundOf(study, { lilt: liltOf(study, 2) })), written);
    const eased = [0, 2 / 3, 1, 1 + third, 1 + 2 * third, 2, 2.25, 3];
    near(onsetsOf(soundOf(study, { lilt: liltOf(study, 2, true) })), eased);
  });

  it('gives a jig’s three quavers a length each, and leaves its long and short alone', () => {
    const study = studyAbc(jig, 'DEF F2A|');
    const lilt = liltOf(study, 1);
    const beat = 1.5;
    const sounding = soundOf(study, { lilt });
    near(onsetsOf(sounding), [0, (1.4 / 3) * beat, (2 / 3) * beat, beat, beat + 1]);
    expect(sounding.length).toBeCloseTo(3, 9);
  });

  it('falls on the same quavers after a pickup as without one', () => {
    const study = studyAbc(hornpipe, 'A|DEFG A2 d2|');
    const lilt = liltOf(study, 2);
    // The pickup is the second of its pair: it comes late, and is short.
    near(onsetsOf(soundOf(study, { lilt })).slice(0, 4), [1 / 6, 0.5, 0.5 + 2 / 3, 1.5]);
  });
});

describe('a time round', () => {
  const study = studyAbc(reel, 'A|DEFG A2 d2|d2 A2 F3|');

  it('has a breath that keeps the beat', () => {
    const tempo = { beat: fraction(1, 4), perMinute: 60 };
    expect(soundOf(study, { tempo, breath: 0 }).length).toBeCloseTo(8, 9);
    expect(soundOf(study, { tempo, breath: 1 }).length).toBeCloseTo(9, 9);
    const phrase = { kind: 'into', anchor: 'turn' } as const;
    expect(passagesOf(study, phrase)).toEqual([]);
  });

  it('leaves as long a silence for the answer, and really is silent', () => {
    const sounding = soundOf(study, { answer: true });
    expect(sounding.length).toBeCloseTo(16, 9);
    const samples = renderWhole(sounding, rate);
    expect(levelAt(samples, Math.round(8.2 * rate), Math.round(7.7 * rate))).toBeLessThan(-90);
    expect(levelAt(samples, 0, 7 * rate)).toBeGreaterThan(-30);
  });

  it('has its beats on the beats of its bars, and goes on with them in the silence', () => {
    const sounding = soundOf(study, { pulse: true, answer: true });
    const ticks = sounding.ticks.map(t => t.at);
    near(
      ticks,
      Array.from({ length: 16 }, (_, i) => i + 0.5),
    );
    const strong = sounding.ticks.filter(t => t.strong).map(t => t.at);
    near(strong, [0.5, 4.5, 8.5, 12.5]);
  });

  it('is counted in by a bar and what its first bar lacks', () => {
    const [passage] = passagesOf(study, { kind: 'all' });
    if (!passage) throw new Error('no passage');
    const count = countIn(study, passage, { beat: fraction(1, 4), perMinute: 60 });
    expect(count.length).toBeCloseTo(7.5, 9);
    near(
      count.ticks.map(t => t.at),
      [0, 1, 2, 3, 4, 5, 6, 7],
    );
    expect(count.ticks.map(t => t.strong)).toEqual([
      true,
      false,
      false,
      false,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('strokes', () => {
  it('are those of the bowing: slurs one, trebles three, ties and chords none more', () => {
    const study = studyAbc(reel, '(3vEEE (GB) A2- A2|[DA]4 B4|');
    const { strokes } = soundOf(study);
    expect(strokes.map(s => s.direction)).toEqual([
      'down',
      'up',
      'down',
      'up',
      'down',
      'up',
      'down',
    ]);
    expect(strokes.map(s => s.tones.length)).toEqual([1, 1, 1, 2, 1, 1, 1]);
    expect(strokes[5]?.tones[0]?.pitches).toEqual([62, 69]);
    expect(strokes[4]?.until).toBeCloseTo(4, 9);
    expect(strokes.slice(0, -1).every(s => s.runsOn)).toBe(true);
    expect(strokes.at(-1)?.runsOn).toBe(false);
  });

  it('play a roll, a cut and a trill within the one bow', () => {
    const study = studyAbc(reel, '~G3 A {c}B4|TA4 d4|');
    const [roll, plain, cut, trill] = soundOf(study).strokes;
    // G, the note above, G, the note below (F sharp in D), G.
    expect(roll?.tones.map(t => t.pitches[0])).toEqual([67, 69, 67, 66, 67]);
    expect(plain?.tones.length).toBe(1);
    expect(cut?.tones.map(t => t.pitches[0])).toEqual([73, 71]);
    expect((cut?.tones[1]?.at ?? 0) - (cut?.tones[0]?.at ?? 0)).toBeLessThanOrEqual(0.05);
    expect(new Set(trill?.tones.map(t => t.pitches[0]))).toEqual(new Set([69, 71]));
    expect(trill?.tones.length).toBeGreaterThan(6);
  });

  it('stop within hooks, and lift at a retake and before a rest', () => {
    const study = studyAbc(reel, '(.A.B) vc2 vd2 e2|f2 z2 f2 e2|');
    const { strokes } = soundOf(study);
    expect(strokes[0]?.tones.map(t => t.stopped)).toEqual([false, true]);
    const lifted = strokes.findIndex((s, i) => s.direction === strokes[i + 1]?.direction);
    expect(lifted).toBeGreaterThan(0);
    expect(strokes[lifted]?.runsOn).toBe(false);
    expect(strokes[lifted]?.until).toBeLessThan(strokes[lifted + 1]?.from ?? 0);
    expect(strokes.find(s => Math.abs(s.until - 5) < 1e-9)?.runsOn).toBe(false);
  });

  it('lean on the beat, in a polka off it', () => {
    const accents = (head: string, body: string): number[] =>
      soundOf(studyAbc(head, body)).strokes.map(s => s.tones[0]?.accent ?? 0);
    const [onReel, offReel] = accents(reel, 'DEFG ABcd|');
    expect(onReel).toBeGreaterThan(offReel ?? 9);
    const [onPolka, offPolka] = accents('R:polka\nM:2/4\nL:1/8\nK:D', 'DE FG|');
    expect(offPolka).toBeGreaterThan(onPolka ?? 9);
  });
});

describe('passages', () => {
  const twice = studyAbc(reel, '|:A|D8|E8|F8|[1G7:|[2A8||B8|c8|d8|e8|]');
  const bars = (study: typeof twice, first: number, end: number): string =>
    study.performance.notes
      .slice(first, end)
      .map(n => study.tune.bars[study.tune.events[n.event]?.bar ?? -1]?.name)
      .join(' ');
  const heard = (choice: Parameters<typeof passagesOf>[1]): string[] =>
    passagesOf(twice, choice).map(p => bars(twice, p.first, p.end));

  it('are phrases each time they come round, with the pickup before them', () => {
    expect(heard({ kind: 'phrases', first: 0, last: 0 })).toEqual(['A0 A1 A2', 'A0 A1 A2']);
    expect(heard({ kind: 'phrases', first: 1, last: 1 })).toEqual(['A3 A4/1', 'A3 A4/2']);
  });

  it('reach from one phrase to another, once round at a time', () => {
    expect(heard({ kind: 'phrases', first: 0, last: 1 })[0]).toBe('A0 A1 A2 A3 A4/1');
  });

  it('begin a second ending with the bars before it', () => {
    const ending = twice.map.phrases.findIndex(p => p.name === 'A4/2');
    expect(heard({ kind: 'phrases', first: ending, last: ending })).toEqual(['A3 A4/2']);
  });

  it('are parts as written, with both their times through', () => {
    expect(heard({ kind: 'part', part: 0 })).toEqual(['A0 A1 A2 A3 A4/1 A0 A1 A2 A3 A4/2']);
    expect(heard({ kind: 'part', part: 1 })).toEqual(['B1 B2 B3 B4']);
  });
});

describe('the way into a passage that all play alike', () => {
  it('is its lead-in and itself, each time it comes', () => {
    const study = studyAbc(reel, '|:DEFG ABcd|efga gfed|ABcd edcB|A4 D4:|', {
      anchors: [anchorAt('A3-A4', 'down')],
    });
    const passages = passagesOf(study, { kind: 'into', anchor: 'turn' });
    expect(passages.length).toBe(2);
    const notes = study.performance.notes;
    for (const [i, p] of passages.entries()) {
      expect(notes[p.first]?.pass).toBe(i + 1);
      expect(p.end - p.first).toBe(16 + 8 + 2);
    }
  });
});

describe('every tune of the demo book', () => {
  it('sounds whole: each note in its stroke, in order, within the round, at full scale at most', async () => {
    const { tunes } = await studyBook(join(import.meta.dirname, '../../content'), () => {});
    expect(tunes.length).toBeGreaterThan(10);
    for (const { study } of tunes) {
      if (!study) throw new Error('a demo tune was not read');
      const sounding = soundOf(study, {
        lilt: liltOf(study, liltRange(study.tune).usual),
        tempo: { beat: fraction(1, 4), perMinute: 200 },
        pulse: true,
      });
      expect(sounding.notes.length).toBe(study.performance.notes.length);
      expect(sounding.strokes.length).toBe(study.bowing.plan.strokes.length);
      sounding.strokes.forEach((s, i) => {
        expect(s.until).toBeGreaterThan(s.from);
        expect(s.until).toBeLessThanOrEqual((sounding.strokes[i + 1]?.from ?? Infinity) + 1e-9);
        s.tones.forEach((t, k) => {
          expect(t.at).toBeGreaterThanOrEqual(s.tones[k - 1]?.at ?? s.from - 1e-9);
        });
      });
      const peak = renderWhole(sounding, 22_050).reduce((m, x) => Math.max(m, Math.abs(x)), 0);
      expect(peak, study.tune.title).toBeLessThan(1);
    }
  });
});
