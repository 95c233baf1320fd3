import type { BookNames } from '../read/book-names.ts';

/** Questions that a page asked of the book's names, with their answers; key null: all of a table's names. */
export type Asked = readonly (readonly [
  table: keyof BookNames,
  key: string | null,
  answer: string,
])[];

/**
 * Wraps the names of a book so that every question asked of them is recorded. A page is read again only
 * when its own text has changed or one of its answers has: a new lesson changes the names of the book,
 * and hardly any page's answers.
 */
export function traceNames(all: BookNames): {
  readonly names: BookNames;
  readonly asked: () => Asked;
} {
  const asked = new Map<string, Asked[number]>();
  const ask = (table: keyof BookNames, key: string | null): void => {
    asked.set(JSON.stringify([table, key]), [table, key, answerOf(all, table, key)]);
  };
  const traced = <T extends object>(table: keyof BookNames, names: T): T =>
    new Proxy(names, {
      get(of, property) {
        const value: unknown = Reflect.get(of, property, of);
        if (property === 'get' || property === 'has') {
          return (key: string) => {
            ask(table, key);
            return (value as (key: string) => unknown).call(of, key);
          };
        }
        ask(table, null);
        return typeof value === 'function' ? value.bind(of) : value;
      },
    });
  const tables = Object.entries(all) as [keyof BookNames, object][];
  return {
    names: Object.fromEntries(
      tables.map(([table, names]) => [table, traced(table, names)]),
    ) as unknown as BookNames,
    asked: () => [...asked.values()],
  };
}

/** Whether the names of a book still answer every question as they did. */
export const sameAnswers = (asked: Asked, all: BookNames): boolean =>
  asked.every(([table, key, answer]) => answerOf(all, table, key) === answer);

/** Leaves places out: where a name stands matters only for names given twice, which end a build. */
function answerOf(all: BookNames, table: keyof BookNames, key: string | null): string {
  const names = all[table];
  if (key === null) return JSON.stringify([...names.entries()].map(withoutPlace));
  if ('get' in names) return JSON.stringify(withoutPlace([key, names.get(key) ?? null]));
  return JSON.stringify('has' in names ? names.has(key) : names);
}

function withoutPlace([key, value]: readonly [unknown, unknown]): unknown {
  if (value === null || typeof value !== 'object') return [key, value];
  const { sitePath, headings } = value as { sitePath?: string; headings?: Set<string> };
  return [key, sitePath ?? '', [...(headings ?? [])]];
}
