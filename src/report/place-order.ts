import type { Problem } from '../../shared/problem.ts';

/** Sorts problems by file, line and column; those of the book as a whole come first. */
export const inPlaceOrder = (problems: readonly Problem[]): readonly Problem[] =>
  [...problems].sort(comparePlaces);

function comparePlaces(a: Problem, b: Problem): number {
  if (!a.place || !b.place) return Number(a.place !== null) - Number(b.place !== null);
  if (a.place.file !== b.place.file) return a.place.file < b.place.file ? -1 : 1;
  return a.place.line - b.place.line || a.place.column - b.place.column;
}
