import { type Bowing, sameBowing } from './trial.ts';

/** Undo history of the bowings that a student has tried. */
export interface Steps {
  readonly past: readonly Bowing[];
  readonly now: Bowing;
  readonly future: readonly Bowing[];
}

/** A history that holds one bowing. */
export const firstStep = (now: Bowing): Steps => ({ past: [], now, future: [] });

/** Adds a bowing and discards what was undone. Returns the same history for an equal bowing. */
export const stepTo = (steps: Steps, to: Bowing): Steps =>
  sameBowing(steps.now, to) ? steps : { past: [...steps.past, steps.now], now: to, future: [] };

/** Undoes one step; null where there is none to undo. */
export function stepBack({ past, now, future }: Steps): Steps | null {
  const before = past.at(-1);
  return before ? { past: past.slice(0, -1), now: before, future: [now, ...future] } : null;
}

/** Redoes one step; null where none was undone. */
export function stepForward({ past, now, future }: Steps): Steps | null {
  const [next, ...rest] = future;
  return next ? { past: [...past, now], now: next, future: rest } : null;
}
