import { expect, it } from 'vitest';
import { workedOut } from '../../src/incremental/worked-out.ts';

const counted = () => {
  const worked: string[] = [];
  const work = ({ name }: { readonly name: string }): number => worked.push(name);
  return { worked, work };
};

it('what was asked for is worked out once, and taken over by the next build', () => {
  const [first, second] = [{ name: 'first' }, { name: 'second' }];
  const { worked, work } = counted();
  const before = workedOut(new Map(), work);
  expect([before.of(first), before.of(second), before.of(first)]).toEqual([1, 2, 1]);
  const after = workedOut(before.asked, work);
  expect(after.of(second)).toBe(2);
  expect(worked).toEqual(['first', 'second']);
});

it('what is not asked for again is let go, and what is read anew is worked out anew', () => {
  const [page, other] = [{ name: 'page' }, { name: 'other' }];
  const { worked, work } = counted();
  const before = workedOut(new Map(), work);
  before.of(page);
  before.of(other);
  const after = workedOut(before.asked, work);
  after.of({ ...page });
  expect([...after.asked.keys()]).toEqual([page]);
  expect(after.asked.has(page)).toBe(false);
  expect(worked).toEqual(['page', 'other', 'page']);
});
