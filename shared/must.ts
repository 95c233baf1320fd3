/**
 * Small guards for what the program itself has made. Data that contradict themselves are a defect of
 * ours, and throw here, where they are found: they never become a plausible note or stroke. What a
 * teacher writes is checked elsewhere, and becomes a `Problem`.
 */

/** The element of a list at an index from 0. Throws where the list has none there. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const found = list[index];
  if (found === undefined) throw new RangeError(`nothing at ${index} of ${list.length}`);
  return found;
}

/** A value that must be there; `what` says in the error what was looked for. Throws without it. */
export function got<T>(value: T | null | undefined, what: string): T {
  if (value === undefined || value === null) throw new Error(`there is no ${what}`);
  return value;
}
