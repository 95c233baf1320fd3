import type { BookNames } from '../read/book-names.ts';

/** The look-ups that a page made in the tables of names, with the results; key null: it read the whole table. */
export type Asked = readonly (readonly [
  table: keyof BookNames,
  key: string | null,
  answer: string,
])[];

/**
 * Wraps the names of a book so that every look-up is recorded. A page depends on the results of its look-ups
 * and not on the whole tables: a new lesson changes the tables, but hardly any page's look-ups, so that few
 * pages are read again.
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

/** Whether every recorded look-up gives the same result in the names of a book. */
export const sameAnswers = (asked: Asked, all: BookNames): boolean =>
  asked.every(([table, key, answer]) => answerOf(all, table, key) === answer);

/** The result of a look-up as text, without places: they matter only for names given twice, which end a build. */
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
