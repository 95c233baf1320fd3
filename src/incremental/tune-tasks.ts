import type { PagePlan, ShowPlan } from '../pages/make-pages.ts';
import { jobKeys, type TuneTask, tuneJobs } from '../pipeline/tune-jobs.ts';
import type { Block, Book } from '../read/book.ts';
import { cacheKey } from './open-cache.ts';

interface TuneTasksInput {
  readonly plans: readonly PagePlan[];
  readonly isPrivate: boolean;
  /** Hash of the program, since it makes the tunes and the pages. */
  readonly program: string;
  /** The sum of a block. */
  readonly sumOf: (block: Block) => string;
}

/** Every tune of a book, in its order, with the pages that show no other: one thread makes them all. */
export function tuneTasks(
  book: Book,
  { plans, isPrivate, program, sumOf }: TuneTasksInput,
): readonly TuneTask[] {
  const showing = new Map<string, ShowPlan[]>();
  for (const plan of plans) {
    for (const id of plan.tunes ?? []) {
      const known = showing.get(id);
      if (known) known.push(plan as ShowPlan);
      else showing.set(id, [plan as ShowPlan]);
    }
  }
  const keyOf = jobKeys(book.settings, program, sumOf);
  return tuneJobs(book, isPrivate).map(job => {
    const key = keyOf(job);
    const pages = showing.get(job.block.id) ?? [];
    return {
      key,
      job,
      pages: pages
        .filter(({ tunes }) => tunes.length === 1)
        .map(plan => ({
          path: plan.path,
          from: pageFrom(program, plan, key),
          get recipe() {
            return plan.recipe;
          },
        })),
      isShared: pages.length > 1 || book.settings.print.length > 0,
    };
  });
}

/** What a page is made from: the program, the book, and the tunes that it shows. */
export const pageFrom = (program: string, { state }: PagePlan, tunes: string): string =>
  cacheKey(program, state(), tunes);
