import type { Direction } from '../music/tune.ts';
import type { Outcome } from './trial.ts';

/** What an edit turns round, of the whole tune as played. Indices are of sounded notes. */
export interface Turned {
  readonly notes: readonly number[];
  /** Of them, those that the chain shows, by event. */
  readonly events: ReadonlySet<number>;
}

/** The notes whose stroke is another one after the edit than before it. */
export function turnedBy(before: Outcome, after: Outcome): Turned {
  const { notes } = after.study.performance;
  const turned = notes.flatMap((_, k) =>
    directionAt(before, k) === directionAt(after, k) ? [] : [k],
  );
  return { notes: turned, events: new Set(turned.map(k => notes[k]?.event ?? -1)) };
}

/** The stroke of a sounded note. */
export function directionAt({ study }: Outcome, note: number): Direction {
  const { strokes, strokeOf } = study.bowing.plan;
  return strokes[strokeOf[note] ?? -1]?.direction ?? 'down';
}
