import { type Bowing, sameBowing } from './trial.ts';

/** The bowings that a student has been through: taken back one by one, and taken up again. */
export interface Steps {
  readonly past: readonly Bowing[];
  readonly now: Bowing;
  readonly future: readonly Bowing[];
}

export const firstStep = (now: Bowing): Steps => ({ past: [], now, future: [] });

/** Goes on to another bowing. What had been taken back is forgotten; the same bowing is no step. */
export const stepTo = (steps: Steps, to: Bowing): Steps =>
  sameBowing(steps.now, to) ? steps : { past: [...steps.past, steps.now], now: to, future: [] };

export function stepBack({ past, now, future }: Steps): Steps | null {
  const before = past.at(-1);
  return before ? { past: past.slice(0, -1), now: before, future: [now, ...future] } : null;
}

export function stepForward({ past, now, future }: Steps): Steps | null {
  const [next, ...rest] = future;
  return next ? { past: [...past, now], now: next, future: rest } : null;
}
