import type { Problem } from '../problem.ts';
import type { Rule } from '../rules.ts';

/** A problem in words: what was found and expected, and how to mend it. */
export interface ProblemWords {
  readonly message: string;
  readonly mend: string;
}

/** The sentences of every rule. */
export type Messages = { readonly [R in Rule]: (p: Problem<R>) => ProblemWords };
