import type { WordedProblem } from '../../shared/preview-news.ts';
import type { Problem } from '../../shared/problem.ts';
import { reportWords } from '../../shared/words/en/report.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { excerpt } from '../report/excerpt.ts';
import type { SourceReader } from '../report/format-problems.ts';
import { inPlaceOrder } from '../report/place-order.ts';

/** Problems in words with the lines they refer to: errors first, then by place. Reads each file once. */
export function wordProblems(
  problems: readonly Problem[],
  readSource: SourceReader,
): readonly WordedProblem[] {
  const sources = new Map<string, string | null>();
  const sourceOf = (file: string): string | null => {
    const known = sources.get(file);
    if (known !== undefined) return known;
    const text = readSource(file);
    sources.set(file, text);
    return text;
  };
  const ordered = inPlaceOrder(problems);
  return (['error', 'warning', 'note'] as const)
    .flatMap(severity => ordered.filter(p => p.severity === severity))
    .map(p => ({
      rule: p.rule,
      severity: p.severity,
      file: p.place?.file ?? null,
      at: p.place && reportWords.at(p.place),
      ...wordProblem(p),
      excerpt: p.place ? excerpt(p.place, sourceOf(p.place.file)) : [],
    }));
}
