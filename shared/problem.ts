import { type FactsOf, type Rule, rules, type Severity } from './rules.ts';

/**
 * What is wrong with a book: a rule and facts, no wording. `words/` makes the sentences, and
 * `src/report/` prints them with their place. Defects in our own code throw; defects in a book
 * become one of these and never do.
 */
export type Problem<R extends Rule = Rule> = R extends Rule ? ProblemOf<R> : never;

interface ProblemOf<R extends Rule> {
  readonly rule: R;
  /** As `rules` has it, unless the caller says why it weighs otherwise there. */
  readonly severity: Severity;
  /** null where the problem is of the whole book. */
  readonly place: Place | null;
  readonly facts: FactsOf<R>;
  /** The text that was found; null where there is none to quote. */
  readonly actual: string | null;
  /** What would be right; empty where that is not known. */
  readonly expected: readonly string[];
  /** The known name nearest to what was found; null for none. */
  readonly nearest: string | null;
}

/** A place in a file of the book. Lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

type Found = Partial<Pick<ProblemOf<Rule>, 'actual' | 'expected' | 'nearest'>>;

/** What `problem` is told besides rule and place: the facts must be there where the rule has any. */
export type ProblemRest<R extends Rule> =
  object extends FactsOf<R>
    ? readonly [rest?: Found]
    : readonly [rest: Found & { readonly facts: FactsOf<R> }];

/** Makes a problem of the weight that its rule has; what is left out is empty. */
export function problem<R extends Rule>(
  rule: R,
  place: Place | null,
  ...[rest]: ProblemRest<R>
): Problem<R> {
  const { severity } = rules[rule];
  const empty = { facts: {}, actual: null, expected: [], nearest: null };
  return { rule, severity, place, ...empty, ...rest } as unknown as Problem<R>;
}
