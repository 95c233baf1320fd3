import { beforeAll, expect, test } from 'vitest';
import { checkDrillsOf, everySource, midiOf } from './any-drill.ts';
import type { Drilled } from './drill-sources.ts';

let sources: Drilled[];
beforeAll(async () => {
  sources = await everySource();
}, 120_000);

/** What is heard of a phrase: bar, onset and top pitch of each of the notes, as text and by time. */
function heard({ source }: Drilled, phrase: number, notes: readonly number[]) {
  const bars = (source.map.phrases[phrase]?.bars ?? []).filter(b => !source.tune.bars[b]?.pickup);
  return notes.map(event => {
    const e = source.tune.events[event];
    const top = e?.kind === 'note' ? e.pitches.at(-1)?.midi : undefined;
    return {
      event,
      bar: bars.indexOf(e?.bar ?? -1),
      onset: (e?.onset.n ?? 0) / (e?.onset.d ?? 1),
      top,
    };
  });
}

test('same: the two are compared note by note, and part where the drill says', {
  timeout: 120_000,
}, () => {
  let [alike, unlike] = [0, 0];
  const made = checkDrillsOf(sources, 'same', (drill, of) => {
    const [a, b] = [
      heard(of, drill.earlier, drill.earlierNotes),
      heard(of, drill.later, drill.laterNotes),
    ];
    const key = (n: (typeof a)[number]): string => `${n.bar} ${n.onset.toFixed(9)}`;
    const inA = new Map(a.map(n => [key(n), n.top]));
    const inB = new Map(b.map(n => [key(n), n.top]));
    const times = [...a, ...b].sort((x, y) => x.bar - y.bar || x.onset - y.onset);
    const first = times.find(n => inA.get(key(n)) !== inB.get(key(n)));
    if (!first) {
      alike++;
      // A note tied over from before the phrase, or a bar more, is a difference that no onset shows.
      if (drill.parts !== null) expect([b[0]?.event, b.at(-1)?.event]).toContain(drill.parts);
      return;
    }
    unlike++;
    expect(drill.parts).not.toBeNull();
    const before = b.filter(
      n => n.bar < first.bar || (n.bar === first.bar && n.onset <= first.onset + 1e-9),
    );
    const expected = before.at(-1) ?? b[0];
    expect(drill.parts, of.name).toBe(expected?.event);
  });
  expect(made).toBeGreaterThan(700);
  expect(Math.min(alike, unlike)).toBeGreaterThan(100);
});

test('forks: the phrase written next is the answer, and every other choice is another phrase', {
  timeout: 120_000,
}, () => {
  const made = checkDrillsOf(sources, 'forks', (drill, of) => {
    const { phrases } = of.source.map;
    const label = (i: number | undefined): string => phrases[i ?? -1]?.label ?? '?';
    const answer = drill.choices[drill.right];
    const labels = drill.choices.map(label);
    expect(new Set(labels).size).toBe(labels.length);
    expect(labels.length).toBeGreaterThan(1);
    // Within a part the next phrase is the next one written.
    const [here, next] = [phrases[drill.after], phrases[drill.after + 1]];
    if (here && next && here.part === next.part) expect(answer).toBe(drill.after + 1);
    else expect(phrases[answer ?? -1]?.part).not.toBe(here?.part);
    // It is a fork: the same phrase elsewhere goes on to one of the other choices.
    const elsewhere = phrases.flatMap((p, i) =>
      p.label === here?.label && i !== drill.after
        ? of.source.map.forks.flatMap(f => f.goesOn.filter(w => w.after === i))
        : [],
    );
    expect(elsewhere.some(w => label(w.to) !== label(answer) && labels.includes(label(w.to)))).toBe(
      true,
    );
  });
  expect(made).toBeGreaterThan(400);
});

test('every drill of a kind asks about notes that the tune has', () => {
  checkDrillsOf(
    sources,
    'same',
    (drill, of) => {
      for (const e of [...drill.earlierNotes, ...drill.laterNotes])
        expect(midiOf(of, e)).not.toBe('rest');
    },
    500,
  );
});
