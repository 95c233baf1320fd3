import { at } from '../must.ts';
import type { Dice } from './dice.ts';
import type { DrillAsk, ForksDrill, NoDrill } from './drill.ts';
import { type DrillSource, partsFor } from './drill-source.ts';

/**
 * Which way does it go on this time: at one of the map's forks. Beginners choose between the ways
 * that the fork has and see how each begins; an improver has one more phrase to choose from; the
 * advanced choose by name from all the phrases of the tune.
 */
export function makeForks(source: DrillSource, ask: DrillAsk, dice: Dice): ForksDrill | NoDrill {
  const parts = partsFor(source, ask.to);
  const { phrases, forks } = source.map;
  const ways = forks.flatMap(fork =>
    fork.goesOn.flatMap(way => (parts.has(at(phrases, way.after).part) ? [{ fork, way }] : [])),
  );
  if (ways.length === 0) return 'no-fork';
  const { fork, way } = dice.pick(ways);
  const label = (i: number): string => at(phrases, i).label;
  /** The first phrase of each label but the answer's. */
  const others = (all: readonly number[]): number[] => [
    ...new Map(
      all
        .filter(i => label(i) !== label(way.to))
        .toReversed()
        .map(i => [label(i), i] as const),
    ).values(),
  ];
  const ends = others(fork.goesOn.map(w => w.to));
  const rest = others([...phrases.keys()]).filter(i => !ends.some(e => label(e) === label(i)));
  const extra = { beginner: 0, improver: 1, advanced: 4 }[ask.level];
  const choices = [way.to, ...ends, ...dice.shuffle(rest).slice(0, extra)].sort((a, b) =>
    label(a) < label(b) ? -1 : 1,
  );
  const time = phrases.slice(0, way.after + 1).filter(p => p.label === fork.label).length;
  return {
    ...ask,
    kind: 'forks',
    after: way.after,
    time,
    choices,
    right: choices.indexOf(way.to),
    openings: ask.level !== 'advanced',
  };
}
