import type { Day } from './day.ts';

/**
 * Days after which a tune comes back, each time it was there. Common practice: nobody has tested
 * these numbers on fiddlers.
 */
export const intervals = [1, 3, 7, 14, 30, 60] as const;

/** How well a tune is known: it comes back `intervals[step]` days after `last`. */
export interface TuneState {
  /** Index into `intervals`. */
  readonly step: number;
  /** The day on which it was last played through and ticked, or taught. */
  readonly last: Day;
}

/** What the student has ticked on this device, by tune. */
export type ReviewState = Readonly<Record<string, TuneState>>;

/** A tune as the review knows it. */
export interface ReviewTune {
  readonly id: string;
  /** Days of the lessons that have it, in any order. */
  readonly lessons: readonly Day[];
  /** Its parts, each with the seconds that once through takes at the slow tempo. */
  readonly parts: readonly { readonly name: string; readonly seconds: number }[];
}

/**
 * Where a tune stands on a day: as ticked; else as taught, at the first step, in the newest lesson
 * that has been. null where it has been in no lesson yet and nothing is ticked.
 */
export function stateOf(tune: ReviewTune, state: ReviewState, today: Day): TuneState | null {
  const ticked = Object.hasOwn(state, tune.id) ? state[tune.id] : undefined;
  if (ticked) return ticked;
  const taught = tune.lessons.filter(day => day <= today);
  return taught.length === 0 ? null : { step: 0, last: Math.max(...taught) };
}

export const dueDay = ({ step, last }: TuneState): Day => last + intervalOf(step);

const lastStep = intervals.length - 1;

export const intervalOf = (step: number): number =>
  intervals[Math.min(Math.max(step, 0), lastStep)] ?? intervals[0];

/** The state of a tune ticked on a day: one step on where it was there, one back where it had gone. */
export function ticked(from: TuneState, wasThere: boolean, today: Day): TuneState {
  const step = wasThere ? Math.min(from.step + 1, lastStep) : Math.max(from.step - 1, 0);
  return { step, last: today };
}
