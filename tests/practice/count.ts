import { writeFileSync } from 'node:fs';
import { countedOdds, type PrintedPractice } from '../../shared/bowing/printed-practice.ts';
import { at } from '../../shared/must.ts';
import { type PrintedJunction, slurringTunes } from './slurring-tunes.ts';

/**
 * `npm run practice`: counts the slurs of the book in `BOWBOOK_CORPUS` and writes
 * `shared/bowing/practice-1883.ts`. A rhythm seen fewer than eight times is left out: it says little,
 * and no tune can be put together from what is left.
 */
const fewest = 8;

const { counted } = slurringTunes();
if (counted.length === 0)
  throw new Error('BOWBOOK_CORPUS names no folder with corpus-bowed/ in it');
const junctions = counted.flatMap(t => t.junctions);

const slurredOf = (list: readonly PrintedJunction[]): [number, number] => [
  list.filter(j => j.slurred).length,
  list.length,
];

const grouped = (list: readonly PrintedJunction[], key: (j: PrintedJunction) => string) => {
  const groups = new Map<string, PrintedJunction[]>();
  for (const j of list) groups.set(key(j), [...(groups.get(key(j)) ?? []), j]);
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
};

function rhythmsOf(list: readonly PrintedJunction[]): Record<string, number[]> {
  return Object.fromEntries(
    grouped(list, j => j.kind.rhythm).flatMap(([rhythm, all]) => {
      const of = Math.max(...grouped(all, j => `${j.kind.index}`).map(([, own]) => own.length));
      if (of < fewest) return [];
      const notes = rhythm.split(' @')[0]?.split(' ').length ?? 0;
      const slurred = Array.from(
        { length: notes },
        (_, i) => all.filter(j => j.kind.index === i && j.slurred).length,
      );
      return [[rhythm, [of, ...slurred]]];
    }),
  );
}

const rhythmical: PrintedPractice = {
  source: "Ryan's Mammoth Collection, Boston 1883",
  counted: new Date().toISOString().slice(0, 10),
  all: slurredOf(junctions),
  places: Object.fromEntries(
    grouped(junctions, j => j.kind.place)
      .filter(([, all]) => all.length >= fewest)
      .map(([place, all]) => [place, slurredOf(all)]),
  ),
  rhythms: {
    any: rhythmsOf(junctions),
    ...Object.fromEntries(
      grouped(
        junctions.filter(j => j.kind.type !== 'any'),
        j => j.kind.type,
      ).map(([type, all]) => [type, rhythmsOf(all)]),
    ),
  },
  intervals: {},
  dots: {},
};

/** Weights of intervals and dots on top of the rhythm: the likeliest, by Newton's steps in turn. */
function fitWeights(): Pick<PrintedPractice, 'intervals' | 'dots'> {
  const weights = { interval: {} as Record<string, number>, dots: {} as Record<string, number> };
  const odds = junctions.map(j => countedOdds(rhythmical, j.kind));
  for (let round = 0; round < 20; round++) {
    for (const name of ['interval', 'dots'] as const) {
      const sums = new Map<string, { slope: number; bend: number }>();
      junctions.forEach(({ kind, slurred }, i) => {
        const log =
          at(odds, i) + (weights.interval[kind.interval] ?? 0) + (weights.dots[kind.dots] ?? 0);
        const p = 1 / (1 + Math.exp(-log));
        const sum = sums.get(kind[name]) ?? { slope: 0, bend: 0 };
        sum.slope += (slurred ? 1 : 0) - p;
        sum.bend += p * (1 - p);
        sums.set(kind[name], sum);
      });
      for (const [value, { slope, bend }] of sums) {
        const now = weights[name][value] ?? 0;
        weights[name][value] = now + (slope - 0.5 * now) / (bend + 0.5);
      }
    }
  }
  const rounded = (of: Record<string, number>) =>
    Object.fromEntries(
      Object.entries(of)
        .map(([value, w]) => [value, Math.round(w * 100) / 100] as const)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    );
  return { intervals: rounded(weights.interval), dots: rounded(weights.dots) };
}

const practice = { ...rhythmical, ...fitWeights() };
writeFileSync(
  'shared/bowing/practice-1883.ts',
  `import type { PrintedPractice } from './printed-practice.ts';

/**
 * Counted by \`npm run practice\` from every other slurring tune of a transcription of half the book
 * (${counted.length} tunes, ${junctions.length} junctions); the tunes between are kept for trying. Public domain.
 */
export const practice1883: PrintedPractice = ${JSON.stringify(practice)};
`,
);
