import { beforeAll, expect, test } from 'vitest';
import type { NoteEvent } from '../../shared/music/tune.ts';
import { checkDrillsOf, everySource, midiOf } from './any-drill.ts';
import type { Drilled } from './drill-sources.ts';

let sources: Drilled[];
beforeAll(async () => {
  sources = await everySource();
}, 120_000);

/** Written notes of bars, those tied on to left out, read off the page with no help of the drills. */
function notesIn({ source }: Drilled, bars: readonly number[]): number[] {
  const { tune } = source;
  const held = new Set<number>();
  let before: NoteEvent | null = null;
  tune.events.forEach((e, i) => {
    if (e.kind !== 'note') {
      before = null;
      return;
    }
    const same = before?.pitches.map(p => p.midi).join() === e.pitches.map(p => p.midi).join();
    if (before?.tied && same) held.add(i);
    before = e;
  });
  const all = bars.flatMap(b =>
    tune.events.flatMap((e, i) => (e.bar === b && e.kind === 'note' ? [i] : [])),
  );
  return all.filter((e, i) => i === 0 || !held.has(e));
}

test('call: one choice has the notes of the bars asked, and no other has', {
  timeout: 120_000,
}, () => {
  const made = checkDrillsOf(sources, 'call', (drill, of) => {
    const pitches = (events: readonly number[]): string => events.map(e => midiOf(of, e)).join(' ');
    const truth = pitches(notesIn(of, drill.asked));
    const heard = drill.choices.map(pitches);
    expect(heard.filter(h => h === truth)).toHaveLength(1);
    expect(heard[drill.right]).toBe(truth);
    expect(new Set(heard).size).toBe(heard.length);
    expect(heard.length).toBeGreaterThan(1);
    expect([1, 2, 4, 8]).toContain(drill.bars.length);
    expect(drill.asked.every(b => drill.bars.includes(b))).toBe(true);
  });
  expect(made).toBeGreaterThan(900);
});

test('gaps: as many as asked, weak notes before strong, never of an anchor; one pitch fits', {
  timeout: 120_000,
}, () => {
  let withAnchor = 0;
  const made = checkDrillsOf(sources, 'gaps', (drill, of) => {
    const { tune, bowing, map } = of.source;
    const anchored = (e: number): boolean => bowing.anchors.some(a => a.first <= e && e <= a.last);
    expect(drill.gaps.filter(anchored)).toEqual([]);
    if (drill.notes.some(anchored)) withAnchor++;
    const free = drill.notes.filter(e => !anchored(e));
    const wanted = Math.max(1, Math.round((drill.notes.length * drill.share) / 100));
    expect(drill.gaps.length).toBe(Math.min(wanted, free.length));
    expect({ beginner: [10], improver: [25], advanced: [50, 75] }[drill.level]).toContain(
      drill.share,
    );
    const starts = new Set(
      map.phrases.flatMap(p => {
        const full = p.bars.find(b => !tune.bars[b]?.pickup);
        return [p.first, tune.bars[full ?? -1]?.first ?? -1];
      }),
    );
    // A phrase start is left out only when nothing else is left to leave out.
    if (drill.gaps.some(e => starts.has(e))) {
      expect(free.filter(e => !starts.has(e) && !drill.gaps.includes(e))).toEqual([]);
    }
    drill.gaps.forEach((gap, i) => {
      const fitting = drill.choices.flatMap((c, at) =>
        midiOf(of, c) === midiOf(of, gap) ? [at] : [],
      );
      expect(fitting).toEqual([drill.right[i]]);
    });
  });
  expect(made).toBeGreaterThan(900);
  expect(withAnchor).toBeGreaterThan(30);
});

test('start: the note, its only place on the fiddle, and its stroke; every other choice is wrong', {
  timeout: 120_000,
}, () => {
  const made = checkDrillsOf(sources, 'start', (drill, of) => {
    const { source } = of;
    const { right, event } = drill;
    const midi = Number(midiOf(of, event));
    const matching = drill.notes.flatMap((e, i) => (Number(midiOf(of, e)) === midi ? [i] : []));
    expect(matching).toEqual([right.note]);
    // By the strings alone: an open string, or up to seven semitones above one, or eight on the top.
    const stop = source.fingering[event]?.[0];
    const string = drill.strings[right.string] ?? 0;
    const open = source.tuning[string - 1]?.midi ?? 0;
    expect(stop?.string).toBe(string);
    expect(open + (stop?.semitones ?? -1)).toBe(midi);
    for (const [i, other] of source.tuning.entries()) {
      if (i + 1 === string) continue;
      const above = midi - other.midi;
      // An open string, or a place that the hand in first position covers, would be right too.
      expect(above < 0 || above > 6, `${of.name} ${midi} also on string ${i + 1}`).toBe(true);
    }
    const fingers = drill.fingers.map(e => {
      const s = source.fingering[e]?.[0];
      return `${s?.finger} ${s?.semitones}`;
    });
    expect(fingers.filter(f => f === `${stop?.finger} ${stop?.semitones}`)).toHaveLength(1);
    expect(fingers[right.finger]).toBe(`${stop?.finger} ${stop?.semitones}`);
    const sounded = source.performance.notes.findIndex(n => n.event === event);
    const stroke = source.bowing.plan.strokes.find(s => s.notes.includes(sounded));
    expect(drill.strokes[right.stroke]).toBe(stroke?.direction);
  });
  expect(made).toBeGreaterThan(900);
});
