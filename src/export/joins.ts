import type { Performance } from '../../shared/music/performance.ts';
import type { Tune } from '../../shared/music/tune.ts';

/** The slurs (by number) and ties that begin and end on a note. */
export interface Joins {
  readonly slurStarts: readonly number[];
  readonly slurStops: readonly number[];
  readonly tieStart: boolean;
  readonly tieStop: boolean;
}

export const noJoins: Joins = { slurStarts: [], slurStops: [], tieStart: false, tieStop: false };

/**
 * The slurs and ties of each written note, by event index. A slur is included where it has both ends;
 * its number differs from those of all slurs open at the same time. A tie is included where the notes
 * are tied as played: into each ending, but not from the end of a repeat back to its start, where the
 * same note begins without a tie the first time through.
 */
export function joinsOf(tune: Tune, performance: Performance): ReadonlyMap<number, Joins> {
  const joins = new Map<number, Joins>();
  const change = (event: number, to: (j: Joins) => Joins): void => {
    joins.set(event, to(joins.get(event) ?? noJoins));
  };
  for (const { from, to, number } of numberedSlurs(tune)) {
    change(from, j => ({ ...j, slurStarts: [...j.slurStarts, number] }));
    change(to, j => ({ ...j, slurStops: [...j.slurStops, number] }));
  }
  const begun = new Set(performance.notes.map(n => n.event));
  for (const { event, tied } of performance.notes) {
    let from = event;
    for (const to of tied) {
      if (!begun.has(to)) {
        change(from, j => ({ ...j, tieStart: true }));
        change(to, j => ({ ...j, tieStop: true }));
      }
      from = to;
    }
  }
  return joins;
}

interface NumberedSlur {
  readonly from: number;
  readonly to: number;
  readonly number: number;
}

/** MusicXML numbers slurs from 1 to 16 (`number-level`). */
const mostSlurs = 16;

/** Slurs over two notes or more, each from the sign that opens it to the one that closes it. */
function numberedSlurs(tune: Tune): readonly NumberedSlur[] {
  const slurs: NumberedSlur[] = [];
  const open: { from: number; number: number }[] = [];
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note') return;
    for (let i = 0; i < event.slursOpened; i++) {
      const taken = new Set([
        ...open.map(s => s.number),
        ...slurs.filter(s => s.to === e).map(s => s.number),
      ]);
      let number = 1;
      while (taken.has(number)) number += 1;
      open.push({ from: e, number });
    }
    for (let i = 0; i < event.slursClosed; i++) {
      const slur = open.pop();
      if (slur && slur.from !== e && slur.number <= mostSlurs) slurs.push({ ...slur, to: e });
    }
  });
  return slurs;
}
