import type { Place, Problem, Severity } from '../../shared/problem.ts';
import { wordProblem } from '../../shared/words/words.ts';

/** The text of a file of the book, by its path from the book's folder; null where there is none. */
export type SourceReader = (file: string) => string | null;

const severities: readonly Severity[] = ['error', 'warning', 'note'];

/**
 * Problems for a terminal, file by file and line by line, each with its place, its rule, what was
 * found, how to mend it and the line it stands on:
 *
 *     lessons/first.md:7:14  error  attribute-unknown
 *       Unexpected `satrt` on `:::anchor`, expected `id`, `of`, `bars` or `start`.
 *       Did you mean `start`?
 *         7 | :::anchor{#a satrt=up}
 *           |              ^
 *
 * The last line counts them. Empty where there are none.
 */
export function formatProblems(problems: readonly Problem[], readSource: SourceReader): string {
  if (problems.length === 0) return '';
  const sorted = [...problems].sort(comparePlaces);
  return `${sorted.map(p => formatProblem(p, readSource)).join('\n\n')}\n\n${countProblems(problems)}\n`;
}

/** One problem, without a line end after it. */
export function formatProblem(p: Problem, readSource: SourceReader): string {
  const { message, mend } = wordProblem(p);
  const where = p.place ? `${placeText(p.place)}  ` : '';
  const shown = p.place ? excerpt(p.place, readSource) : [];
  return [`${where}${p.severity}  ${p.rule}`, `  ${message}`, `  ${mend}`, ...shown].join('\n');
}

/** `2 errors, 1 warning`; `no problems`. */
export function countProblems(problems: readonly Problem[]): string {
  const counts = severities.flatMap(severity => {
    const n = problems.filter(p => p.severity === severity).length;
    return n === 0 ? [] : [`${n} ${severity}${n === 1 ? '' : 's'}`];
  });
  return counts.join(', ') || 'no problems';
}

/** `lessons/first.md:7:14`. */
export const placeText = ({ file, line, column }: Place): string => `${file}:${line}:${column}`;

const widest = 96;

/** The line of a place and a caret under its column; a long line is cut around the column. */
function excerpt({ file, line, column }: Place, readSource: SourceReader): readonly string[] {
  const text = readSource(file)
    ?.replace(/^\uFEFF/, '')
    .split(/\r\n?|\n/)[line - 1];
  if (text === undefined || text.trim() === '') return [];
  // A file may hold signs that would drive the terminal.
  const safe = text.replace(/[^\P{Cc}\t]/gu, '\uFFFD');
  const from = column > widest ? column - Math.floor(widest / 2) : 0;
  const part = safe.slice(from, from + widest);
  const shown = `${from > 0 ? '…' : ''}${part}${from + widest < text.length ? '…' : ''}`;
  const before = (from > 0 ? ' ' : '') + part.slice(0, Math.max(0, column - 1 - from));
  const gutter = `${line}`.padStart(5);
  // Tabs are kept, so that the caret stands under its sign however wide they are shown.
  const indent = before.replace(/[^\t]/g, ' ');
  return [`  ${gutter} | ${shown}`, `  ${' '.repeat(gutter.length)} | ${indent}^`];
}

function comparePlaces(a: Problem, b: Problem): number {
  if (!a.place || !b.place) return Number(a.place !== null) - Number(b.place !== null);
  if (a.place.file !== b.place.file) return a.place.file < b.place.file ? -1 : 1;
  return a.place.line - b.place.line || a.place.column - b.place.column;
}
