import type { BookIndex } from '../read/book-index.ts';

/** One thing that a page asked of the index, and the answer; key null: all the names there are. */
export type Asked = readonly (readonly [
  name: keyof BookIndex,
  key: string | null,
  answer: string,
])[];

/**
 * An index that writes down what it is asked, so that a page need be read again only when its own
 * text has changed or one of these answers would be another. A new lesson changes the index, and
 * hardly any page's answers.
 */
export function traceIndex(index: BookIndex): {
  readonly index: BookIndex;
  readonly asked: () => Asked;
} {
  const asked = new Map<string, Asked[number]>();
  const ask = (name: keyof BookIndex, key: string | null): void => {
    asked.set(JSON.stringify([name, key]), [name, key, answerOf(index, name, key)]);
  };
  const traced = <T extends object>(name: keyof BookIndex, names: T): T =>
    new Proxy(names, {
      get(of, property) {
        const value: unknown = Reflect.get(of, property, of);
        if (property === 'get' || property === 'has') {
          return (key: string) => {
            ask(name, key);
            return (value as (key: string) => unknown).call(of, key);
          };
        }
        ask(name, null);
        return typeof value === 'function' ? value.bind(of) : value;
      },
    });
  const all = Object.entries(index) as [keyof BookIndex, object][];
  return {
    index: Object.fromEntries(
      all.map(([name, of]) => [name, traced(name, of)]),
    ) as unknown as BookIndex,
    asked: () => [...asked.values()],
  };
}

export const sameAnswers = (asked: Asked, index: BookIndex): boolean =>
  asked.every(([name, key, answer]) => answerOf(index, name, key) === answer);

/** Places are left out: where a name stands is told only of names given twice, which end a build. */
function answerOf(index: BookIndex, name: keyof BookIndex, key: string | null): string {
  const names = index[name];
  if (key === null) return JSON.stringify([...names.entries()].map(withoutPlace));
  if ('get' in names) return JSON.stringify(withoutPlace([key, names.get(key) ?? null]));
  return JSON.stringify('has' in names ? names.has(key) : names);
}

function withoutPlace([key, value]: readonly [unknown, unknown]): unknown {
  if (value === null || typeof value !== 'object') return [key, value];
  const { sitePath, headings } = value as { sitePath?: string; headings?: Set<string> };
  return [key, sitePath ?? '', [...(headings ?? [])]];
}
