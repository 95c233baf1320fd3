import type { Standout } from './standouts.ts';

/** What a teacher calls the facts about a passage, in the order in which they are shown. */
export const standoutNames = ['pairs', 'strokes', 'finger', 'strings', 'run'] as const;

/** One of `standoutNames`, as `stands-out` of an anchor takes it. */
export type StandoutName = (typeof standoutNames)[number];

const names: Readonly<Record<Standout['kind'], StandoutName>> = {
  'slurred-pairs': 'pairs',
  'symmetric-strokes': 'strokes',
  'same-finger': 'finger',
  crossings: 'strings',
  run: 'run',
};

/** More than four things to remember are not remembered (common practice). */
const most = 4;

/**
 * Chooses the facts to show of a passage: at most four, one of each kind before a second of any, the
 * longest run first. `keep` are the kinds that the teacher keeps, null for all of them.
 */
export function chooseStandouts(
  standouts: readonly Standout[],
  keep: readonly StandoutName[] | null,
): Standout[] {
  const kinds = (keep ?? standoutNames).map(name =>
    standouts.filter(h => names[h.kind] === name).toSorted(longer),
  );
  const rounds = Math.max(0, ...kinds.map(k => k.length));
  const inTurn = Array.from({ length: rounds }, (_, i) => kinds.flatMap(k => k[i] ?? [])).flat();
  const chosen = inTurn.slice(0, most);
  return kinds.flat().filter(h => chosen.includes(h));
}

const longer = (a: Standout, b: Standout): number =>
  a.kind === 'run' && b.kind === 'run' ? b.notes.length - a.notes.length : 0;
