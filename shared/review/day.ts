/**
 * A day of the calendar, as days from 1 January 1970. Reviews are counted in days as they stand on
 * the student's own wall, not in stretches of 24 hours: clocks that go forward or back, and travel,
 * change nothing.
 */
export type Day = number;

const dayLength = 86_400_000;

/** The day that a clock shows where it hangs. */
export const localDay = (now: Date): Day => dayOf(now.getFullYear(), now.getMonth(), now.getDate());

const dayOf = (year: number, month: number, date: number): Day => {
  // Date.UTC takes the years 0 to 99 for those of the last century.
  const at = new Date(0);
  at.setUTCFullYear(year, month, date);
  return Math.round(at.getTime() / dayLength);
};

/** Reads `2026-11-25`; null when that is no day of the calendar. */
export function readDay(text: string): Day | null {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!m) return null;
  const day = dayOf(Number(m[1]), Number(m[2]) - 1, Number(m[3]));
  return dayText(day) === text ? day : null;
}

/** `2026-11-25`. */
export const dayText = (day: Day): string => new Date(day * dayLength).toISOString().slice(0, 10);

/** The start of a day in UTC, for formatting with `timeZone: 'UTC'`. */
export const dayDate = (day: Day): Date => new Date(day * dayLength);
