import { type Dice, rollDice } from './dice.ts';
import type { Drill, DrillAsk, DrillKind, MadeDrill, NoDrill } from './drill.ts';
import { drillKinds } from './drill.ts';
import type { DrillSource } from './drill-source.ts';
import { makeArrive } from './make-arrive.ts';
import { makeCall } from './make-call.ts';
import { makeCount } from './make-count.ts';
import { makeForks } from './make-forks.ts';
import { makeGaps } from './make-gaps.ts';
import { makeInto } from './make-into.ts';
import { makeSame } from './make-same.ts';
import { makeStart } from './make-start.ts';

type Maker = (source: DrillSource, ask: DrillAsk, dice: Dice) => Drill | NoDrill;

const makers: Readonly<Record<DrillKind, Maker>> = {
  call: makeCall,
  gaps: makeGaps,
  count: makeCount,
  arrive: makeArrive,
  start: makeStart,
  same: makeSame,
  forks: makeForks,
  into: makeInto,
};

/**
 * Makes one drill, or says why the tune gives none of that kind. The same tune, kind, level, seed
 * and anchor give the same drill, in the build and in the browser.
 */
export function makeDrill(source: DrillSource, ask: DrillAsk): MadeDrill {
  if (source.performance.notes.length === 0) return { drill: null, why: 'no-notes' };
  const dice = rollDice(`${ask.kind} ${ask.level} ${source.tune.id}`, ask.seed);
  const made = makers[ask.kind](source, ask, dice);
  return typeof made === 'string' ? { drill: null, why: made } : { drill: made, why: null };
}

/** The kinds of drill that a tune can give, in the usual order. */
export const kindsFor = (source: DrillSource, ask: Omit<DrillAsk, 'kind'>): DrillKind[] =>
  drillKinds.filter(kind => makeDrill(source, { ...ask, kind }).drill !== null);

/** The next drill that asks something else: the next seed but for those that repeat the question. */
export function nextDrill(source: DrillSource, drill: Drill): Drill {
  for (let step = 1; step <= mostRepeats; step++) {
    const ask = { kind: drill.kind, level: drill.level, seed: drill.seed + step, to: drill.to };
    const made = makeDrill(source, ask).drill;
    if (made && questionText(made) !== questionText(drill)) return made;
  }
  return drill;
}

/** Seeds tried for another question. */
const mostRepeats = 16;

const questionText = (drill: Drill): string => JSON.stringify({ ...drill, seed: 0 });
