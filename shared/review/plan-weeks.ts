import type { Day } from './day.ts';
import { planSession } from './plan-session.ts';
import { type ReviewState, type ReviewTune, stateOf, ticked } from './review-state.ts';

export interface PlannedDay {
  readonly day: Day;
  readonly tunes: readonly string[];
}

/** Days of a printed plan. */
export const planLength = 28;

/**
 * Four weeks from today, each day's tunes as if every tune is there when it comes back. What has no
 * room on its day waits for the next. A tune that has gone comes sooner than the plan says.
 */
export function planWeeks(
  tunes: readonly ReviewTune[],
  state: ReviewState,
  today: Day,
  minutes: number,
): readonly PlannedDay[] {
  let then = state;
  return Array.from({ length: planLength }, (_, i) => {
    const day = today + i;
    const session = planSession(tunes, then, day, minutes);
    const done = session.tunes.flatMap(id => {
      const tune = tunes.find(t => t.id === id);
      const from = tune && stateOf(tune, then, day);
      return from ? [[id, ticked(from, true, day)] as const] : [];
    });
    then = { ...then, ...Object.fromEntries(done) };
    return { day, tunes: session.tunes };
  });
}
