import type { Problem } from '../../shared/problem.ts';
import type { Rule, Severity } from '../../shared/rules.ts';
import { wordProblem } from '../../shared/words/words.ts';

/** A problem for other programs; `docs/messages.md` describes it, and `docs/study.schema.json` holds it. */
export interface ProblemJson {
  readonly rule: Rule;
  readonly severity: Severity;
  /** Path from the book's folder; null, as line and column are, for a problem of the book as a whole. */
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly message: string;
  readonly mend: string;
  readonly actual: string | null;
  readonly expected: string | null;
  readonly nearest: string | null;
}

/** Converts a problem to data for JSON, with its sentences. */
export function problemJson(p: Problem): ProblemJson {
  const { message, mend } = wordProblem(p);
  return {
    rule: p.rule,
    severity: p.severity,
    file: p.place?.file ?? null,
    line: p.place?.line ?? null,
    column: p.place?.column ?? null,
    message,
    mend,
    actual: p.actual,
    expected: p.expected.length > 0 ? p.expected.join(', ') : null,
    nearest: p.nearest,
  };
}
