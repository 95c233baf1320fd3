/** Least and greatest speed, in hundredths of a practice tempo; and of a recording's own speed. */
export const paceLimits = { least: 30, most: 120 } as const;
export const clipLimits = { least: 50, most: 120 } as const;

/** How a steady climb goes: so many beats a minute more, every so many times round, to a tempo. */
export interface Climb {
  readonly by: number;
  readonly every: number;
  readonly to: number;
}

/** Beats a minute of a time round, from 0. A climb never comes down to its goal. */
export function climbedTo(start: number, climb: Climb | null, round: number): number {
  if (climb === null || start >= climb.to) return start;
  return Math.min(climb.to, start + climb.by * Math.floor(round / climb.every));
}
