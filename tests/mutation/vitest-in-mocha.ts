import { format } from 'node:util';
import { GLOBAL_EXPECT, JestAsymmetricMatchers, JestChaiExpect, setState } from '@vitest/expect';
import * as chai from 'chai';

/**
 * What the tests use of vitest, made of mocha's globals and of vitest's own `expect`. Stryker's runner
 * for vitest starts a thread and loads every module again for each mutant, about a second; in mocha a
 * mutant that a test notices costs as long as that test.
 */
const mocha = globalThis as unknown as {
  describe: (title: string, body: () => void) => void;
  it: (title: string, body: (this: Running) => unknown) => void;
  before: (body: () => unknown) => void;
  [GLOBAL_EXPECT]?: unknown;
};

chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = ((value: unknown, message?: string) =>
  chai.expect(value, message)) as unknown as Parameters<typeof setState>[1];
mocha[GLOBAL_EXPECT] = expect;
setState({ assertionCalls: 0, isExpectingAssertions: false }, expect);

/** A test while it runs. */
interface Running {
  readonly skip: () => never;
}

type Body = (...row: unknown[]) => unknown;

/** A row's title: `%s` and its like are filled in from the row. */
const rowTitle = (title: string, row: readonly unknown[]): string =>
  format(title, ...row.slice(0, title.match(/%[sijdofO]/g)?.length ?? 0));

const each = (rows: readonly unknown[]) => (title: string, body: Body) => {
  for (const row of rows) {
    const values = Array.isArray(row) ? row : [row];
    mocha.it(rowTitle(title, values), () => body(...values));
  }
};

const nothing = (): void => {};
/** A test with options of its own is a slow one, and left out. */
const plain = (title: string, body: Body | object): void => {
  if (typeof body !== 'function') return;
  mocha.it(title, function () {
    return body({ skip: () => this.skip() });
  });
};
const skipIf = (skip: boolean) => (skip ? nothing : plain);

export const it = Object.assign(plain, { each, skipIf });
export const test = it;
export const describe = Object.assign(
  (title: string, body: () => void): void => mocha.describe(title, body),
  { skipIf: (skip: boolean) => (skip ? nothing : mocha.describe) },
);
export const beforeAll = (body: () => unknown): void => mocha.before(() => body());
