import { beforeAll, describe, expect, test } from 'vitest';
import { levels } from '../../shared/bowing/settings.ts';
import { rollDice } from '../../shared/drills/dice.ts';
import { drillKinds } from '../../shared/drills/drill.ts';
import { drillSource } from '../../shared/drills/drill-source.ts';
import { makeDrill, nextDrill } from '../../shared/drills/make-drill.ts';
import { studyTune } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { type Drilled, demoSources } from './drill-sources.ts';

const { tellDrill } = wordsFor('en', 'letters');

let sources: Drilled[];
beforeAll(async () => {
  sources = await demoSources();
}, 60_000);

describe('dice', () => {
  test('roll the same for the same name and seed, and otherwise for another', () => {
    const rolls = (name: string, seed: number) => {
      const dice = rollDice(name, seed);
      return Array.from({ length: 8 }, () => dice.below(1000)).join();
    };
    expect(rolls('a', 1)).toBe(rolls('a', 1));
    expect(new Set([rolls('a', 1), rolls('a', 2), rolls('b', 1)]).size).toBe(3);
  });

  test('are even-handed: each of ten faces comes up a tenth of the time', () => {
    const counts = Array.from({ length: 10 }, () => 0);
    for (let seed = 0; seed < 2000; seed++) {
      const dice = rollDice('even', seed);
      for (let i = 0; i < 10; i++) {
        const face = dice.below(10);
        counts[face] = (counts[face] ?? 0) + 1;
      }
    }
    // Chi-square with nine degrees of freedom: 27.9 is passed by chance once in a thousand.
    const chi = counts.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
    expect(chi).toBeLessThan(27.9);
  });

  test('shuffle keeps every card', () => {
    const cards = [...'abcdefgh'];
    const mixed = rollDice('cards', 3).shuffle(cards);
    expect(mixed.toSorted()).toEqual(cards);
    expect(mixed).not.toEqual(cards);
  });
});

test('the same tune, kind, level and seed give the same drill after a new study', () => {
  for (const { source, request } of sources) {
    const again = drillSource(studyTune(source.tune, request), request);
    for (const kind of drillKinds) {
      for (const level of levels) {
        const ask = { kind, level, seed: 7, to: null };
        expect(makeDrill(again, ask)).toEqual(makeDrill(source, ask));
      }
    }
  }
});

test('a drill is data: it survives JSON', () => {
  for (const { source } of sources) {
    for (const kind of drillKinds) {
      const made = makeDrill(source, { kind, level: 'improver', seed: 2, to: null });
      expect(JSON.parse(JSON.stringify(made))).toEqual(made);
    }
  }
});

test('the next drill asks something else wherever the tune has something else to ask', () => {
  const [first] = sources;
  if (!first) throw new Error('no demo tune');
  for (const kind of ['call', 'gaps', 'count', 'start'] as const) {
    const { drill } = makeDrill(first.source, { kind, level: 'improver', seed: 1, to: null });
    if (!drill) throw new Error(`no ${kind}`);
    expect(nextDrill(first.source, drill)).not.toEqual(drill);
  }
});

test('every drill has a question, an answer and one sentence why, in whole words', () => {
  const kinds = new Set<string>();
  for (const { source } of sources) {
    for (const kind of drillKinds) {
      for (const level of levels) {
        const { drill } = makeDrill(source, { kind, level, seed: 5, to: null });
        if (!drill) continue;
        kinds.add(kind);
        const told = tellDrill(source, drill, 'letters');
        const lines = [
          ...told.question,
          ...told.answer,
          told.why,
          told.levelSays,
          ...told.items.map(i => i.ask),
        ];
        for (const line of lines) {
          expect(line).not.toMatch(/undefined|null|NaN|\s\s|\bof\s*[,.]/);
          expect(line.trim()).not.toBe('');
        }
        expect(told.why.match(/[.!?](?=\s|$)/g)).toHaveLength(1);
        for (const item of told.items) {
          expect(item.right).toBeGreaterThanOrEqual(0);
          expect(item.right).toBeLessThan(item.choices.length);
          expect(new Set(item.choices.map(c => c.label)).size).toBe(item.choices.length);
        }
      }
    }
  }
  expect([...kinds].sort()).toEqual([...drillKinds].sort());
});
