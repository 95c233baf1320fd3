import type { Place } from '../../shared/problem.ts';

/** Most characters of a line that are shown; a longer line is cut around the place. */
const widest = 96;

/**
 * Formats the line of a place, and a caret under its column:
 *
 *        7 | :::anchor{#a satrt=up}
 *          |              ^
 *
 * Empty where the line is blank or does not exist.
 */
export function excerpt(
  { line, column }: Pick<Place, 'line' | 'column'>,
  source: string | null,
): readonly string[] {
  const text = source?.replace(/^\uFEFF/, '').split(/\r\n?|\n/)[line - 1];
  if (text === undefined || text.trim() === '') return [];
  // Control characters in a file could change the state of the terminal.
  const safe = text.replace(/[^\P{Cc}\t]/gu, '\uFFFD');
  const from = column > widest ? column - Math.floor(widest / 2) : 0;
  const part = safe.slice(from, from + widest);
  const shown = `${from > 0 ? '…' : ''}${part}${from + widest < text.length ? '…' : ''}`;
  const before = (from > 0 ? ' ' : '') + part.slice(0, Math.max(0, column - 1 - from));
  const gutter = `${line}`.padStart(4);
  // Tabs are kept, so that the caret stands under its sign however wide they are shown.
  const indent = before.replace(/[^\t]/g, ' ');
  return [`${gutter} | ${shown}`, `${' '.repeat(gutter.length)} | ${indent}^`];
}
