import type { Hook } from './hooks.ts';

/** What a teacher calls the facts about a passage, in the order in which they are shown. */
export const hookNames = ['pairs', 'strokes', 'finger', 'strings', 'run'] as const;

export type HookName = (typeof hookNames)[number];

const names: Readonly<Record<Hook['kind'], HookName>> = {
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
export function chooseHooks(hooks: readonly Hook[], keep: readonly HookName[] | null): Hook[] {
  const kinds = (keep ?? hookNames).map(name =>
    hooks.filter(h => names[h.kind] === name).toSorted(longer),
  );
  const rounds = Math.max(0, ...kinds.map(k => k.length));
  const inTurn = Array.from({ length: rounds }, (_, i) => kinds.flatMap(k => k[i] ?? [])).flat();
  const chosen = inTurn.slice(0, most);
  return kinds.flat().filter(h => chosen.includes(h));
}

const longer = (a: Hook, b: Hook): number =>
  a.kind === 'run' && b.kind === 'run' ? b.notes.length - a.notes.length : 0;
