import type { Problem } from '../../shared/problem.ts';
import type { Severity } from '../../shared/rules.ts';
import { reportWords } from '../../shared/words/en/report.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { excerpt } from './excerpt.ts';
import { inPlaceOrder } from './place-order.ts';
import { rulePage } from './rule-page.ts';

/** The text of a file of the book, by its path from the book's folder; null where there is none. */
export type SourceReader = (file: string) => string | null;

const severities: readonly Severity[] = ['error', 'warning', 'note'];

/**
 * Formats problems for a terminal, grouped by file and sorted by line. Each has its severity and rule, what is
 * wrong, how to mend it, its line and the page of its rule:
 *
 *     lessons/first.md
 *
 *       Line 7, column 14: error, attribute-unknown
 *         `satrt` is no word of `:::anchor`; it takes `id`, `of`, `bars` or `start`.
 *         Did you mean `start`?
 *            7 | :::anchor{#a satrt=up}
 *              |              ^
 *         More: docs/rules/attribute-unknown.md
 *
 *     1 error
 *
 * Problems of the book as a whole come first, and the last line counts all. Empty where there are none.
 */
export function formatProblems(problems: readonly Problem[], readSource: SourceReader): string {
  if (problems.length === 0) return '';
  const sources = new Map<string, string | null>();
  const lines = inPlaceOrder(problems).flatMap((p, i, all) => {
    const file = p.place?.file ?? null;
    const begins = i === 0 || file !== (all[i - 1]?.place?.file ?? null);
    if (file !== null && begins) sources.set(file, readSource(file));
    const heading = begins ? [file ?? reportWords.wholeBook, ''] : [];
    return [...heading, ...tellProblem(p, file === null ? null : (sources.get(file) ?? null)), ''];
  });
  return `${[...lines, countProblems(problems)].join('\n')}\n`;
}

/** The lines of one problem, under the heading of its file. */
function tellProblem(p: Problem, source: string | null): readonly string[] {
  const { message, mend } = wordProblem(p);
  const named = `${reportWords.severity[p.severity]}, ${p.rule}`;
  const shown = p.place ? excerpt(p.place, source) : [];
  return [
    `  ${p.place ? `${reportWords.at(p.place)}: ` : ''}${named}`,
    ...[message, mend, ...shown, reportWords.more(rulePage(p.rule))].map(line => `    ${line}`),
  ];
}

/** `2 errors, 1 warning`; `no problems`. */
export function countProblems(problems: readonly Problem[]): string {
  const counts = severities.flatMap(severity => {
    const n = problems.filter(p => p.severity === severity).length;
    return n === 0 ? [] : [reportWords.counted(severity, n)];
  });
  return counts.join(', ') || reportWords.none;
}
