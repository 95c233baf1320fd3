/**
 * What can be wrong with a book: codes and facts, no wording. `words/` makes the sentences, and
 * `src/report/` prints them with their place. Defects in our own code throw; defects in a book
 * become one of these and never do.
 */

/** error: nothing is written. warning: built, and said. note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** A place in the teacher's own file. Lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** The facts that a rule's sentence is made from. */
export type Facts = Readonly<Record<string, string | number>>;

export interface Problem {
  /** Kebab-case name of the rule; `docs/rules/` has a page for each. */
  readonly rule: string;
  readonly severity: Severity;
  /** null where the whole book is meant. */
  readonly place: Place | null;
  readonly facts: Facts;
  /** What was found, as written. */
  readonly actual: string | null;
  /** What would have been right. */
  readonly expected: readonly string[];
  /** The nearest known name to what was found. */
  readonly nearest: string | null;
}

/** Makes a problem; what is left out is empty. */
export function problem(
  rule: string,
  severity: Severity,
  place: Place | null,
  rest: Partial<Pick<Problem, 'facts' | 'actual' | 'expected' | 'nearest'>> = {},
): Problem {
  return { rule, severity, place, facts: {}, actual: null, expected: [], nearest: null, ...rest };
}
