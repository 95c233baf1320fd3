import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Edit, SlurGroup } from './bowing.ts';
import { strokesOf } from './lead-in-model.ts';

/**
 * Conversion of bowings to slurs, and of the difference between two bowings to edits.
 *
 * Overlapping slurs of the two bowings are compared. One that only gains or only loses notes is lengthened or
 * shortened; one that becomes several is split; several that become one are merged; any other is dropped and
 * slurred again. `(AB) c d` to `A (Bcd)`: neither slur contains the other, so drop AB, slur Bcd.
 */

/** Lists the slurs of a bowing as event indices; `events` are those of its notes. */
export const slursOf = (bowing: readonly boolean[], events: readonly number[]): SlurGroup[] =>
  slurRuns(bowing).map(([from, last]) => events.slice(from, last + 1));

const slurRuns = (bowing: readonly boolean[]): [number, number][] =>
  strokesOf(bowing).filter(([from, last]) => last > from);

/** Lists the edits that change the written bowing to the other, in order of the notes. */
export function editsBetween(
  written: readonly boolean[],
  bowing: readonly boolean[],
  events: readonly number[],
): Edit[] {
  const [before, after] = [slurRuns(written), slurRuns(bowing)];
  const all = [
    ...before.map(([from, last]) => ({ from, last, old: true })),
    ...after.map(([from, last]) => ({ from, last, old: false })),
  ].sort((a, b) => a.from - b.from || a.last - b.last);
  const clusters: (typeof all)[] = [];
  let reach = -1;
  for (const run of all) {
    if (run.from > reach) clusters.push([]);
    clusters.at(-1)?.push(run);
    reach = Math.max(reach, run.last);
  }
  return clusters.flatMap(cluster => {
    const groups = (old: boolean): SlurGroup[] =>
      cluster.filter(r => r.old === old).map(r => events.slice(r.from, r.last + 1));
    return clusterEdits(groups(true), groups(false));
  });
}

function clusterEdits(from: readonly SlurGroup[], to: readonly SlurGroup[]): Edit[] {
  const [f, t] = [from[0], to[0]];
  if (from.length === 1 && to.length === 1 && f && t) {
    if (f.length === t.length && f[0] === t[0]) return [];
    if (holds(t, f)) return [{ kind: 'lengthen', from: f, to: t }];
    if (holds(f, t)) return [{ kind: 'shorten', from: f, to: t }];
  }
  if (from.length === 1 && to.length > 1 && f && to.every(g => holds(f, g))) {
    return [{ kind: 'split', from: f, to }];
  }
  if (from.length > 1 && to.length === 1 && t && from.every(g => holds(t, g))) {
    return [{ kind: 'merge', from, to: t }];
  }
  return [
    ...from.map<Edit>(notes => ({ kind: 'drop', notes })),
    ...to.map<Edit>(notes => ({ kind: 'slur', notes })),
  ];
}

const holds = (outer: SlurGroup, inner: SlurGroup): boolean => inner.every(e => outer.includes(e));

/** Counts the junctions that an edit changes; a retake counts as one, since it reverses the bow once. */
export function junctionsChanged(edit: Edit): number {
  const junctions = (groups: readonly SlurGroup[]): number =>
    groups.reduce((sum, g) => sum + g.length - 1, 0);
  switch (edit.kind) {
    case 'slur':
    case 'drop':
      return junctions([edit.notes]);
    case 'lengthen':
    case 'shorten':
      return Math.abs(junctions([edit.to]) - junctions([edit.from]));
    case 'split':
      return junctions([edit.from]) - junctions(edit.to);
    case 'merge':
      return junctions([edit.to]) - junctions(edit.from);
    case 'retake':
      return 1;
  }
}

/** Whether an edit reverses all later strokes: it does exactly if it changes an odd number of junctions. */
export const flips = (edit: Edit): boolean => junctionsChanged(edit) % 2 === 1;

/** `slur B5:2-B5:3`, `split A1:1-A1:4 into A1:1-A1:2 and A1:3-A1:4`: an edit as text, for exported studies and facts of problems. */
export function editText(tune: Tune, edit: Edit): string {
  const id = (e: number): string => {
    const event = at(tune.events, e);
    if (event.kind !== 'note') throw new Error(`event ${e} is no note`);
    return event.id;
  };
  const span = (g: SlurGroup): string => `${id(at(g, 0))}-${id(at(g, g.length - 1))}`;
  switch (edit.kind) {
    case 'slur':
    case 'drop':
      return `${edit.kind} ${span(edit.notes)}`;
    case 'lengthen':
    case 'shorten':
      return `${edit.kind} ${span(edit.from)} to ${span(edit.to)}`;
    case 'split':
      return `split ${span(edit.from)} into ${edit.to.map(span).join(' and ')}`;
    case 'merge':
      return `merge ${edit.from.map(span).join(' and ')} into ${span(edit.to)}`;
    case 'retake':
      return [
        `retake ${edit.direction} at ${id(edit.before)}`,
        edit.after === null ? '' : ` after ${id(edit.after)}`,
        edit.opening && ` from ${edit.opening.direction} at ${id(edit.opening.event)}`,
      ].join('');
  }
}
