import type { Place } from '../../problem.ts';
import type { Severity } from '../../rules.ts';

/** What stands around the messages where they are printed. */
export const reportWords = {
  at: ({ line, column }: Pick<Place, 'line' | 'column'>): string =>
    `Line ${line}, column ${column}`,
  wholeBook: 'The book as a whole',
  severity: { error: 'error', warning: 'warning', note: 'note' },
  more: (page: string): string => `More: ${page}`,
  counted: (severity: Severity, n: number): string => `${n} ${severity}${n === 1 ? '' : 's'}`,
  none: 'no problems',
  unknownRule: (rule: string, near: string | null): string =>
    `There is no rule "${rule}".${near === null ? ' Each message names its own.' : ` Did you mean "${near}"?`}`,
} as const;
