import type { PageRecipe } from '../pages/make-page.ts';
import type { PagePlan, ShowPlan } from '../pages/make-pages.ts';
import type { Block, Book } from '../read/book.ts';
import { hashOf } from './hash-of.ts';
import { type TuneJob, tuneJobs } from './tune-job.ts';

/** A tune to make, with the pages that show no other tune. Plain data, so that it can be sent to a thread. */
export interface TuneTask {
  readonly job: TuneJob;
  /** Hash of the job without its prose: every input of the tune's study, drawings and files. */
  readonly inputHash: string;
  readonly pages: readonly PageTask[];
  /** Whether further pages or PDFs show the tune, so that its study and drawings must be kept for them. */
  readonly isShared: boolean;
}

/** A page to make with a tune, and the hash by which an unchanged one is left alone. */
export interface PageTask {
  readonly path: string;
  /** Hash of every input of the page. */
  readonly inputHash: string;
  readonly recipe: PageRecipe;
}

/** The tasks of all tunes, in the order of the book. `plans`: all pages of the site. */
export function tuneTasks(
  book: Book,
  plans: readonly PagePlan[],
  isPrivate: boolean,
): readonly TuneTask[] {
  const showing = new Map<string, ShowPlan[]>();
  for (const plan of plans) {
    if (plan.tunes === null) continue;
    for (const id of plan.tunes) {
      const known = showing.get(id);
      if (known) known.push(plan);
      else showing.set(id, [plan]);
    }
  }
  const settings = hashOf(JSON.stringify(book.settings), String(isPrivate));
  return tuneJobs(book, isPrivate).map(job => {
    const { block, asks } = job;
    const blocks = [block, ...Object.values(asks).flat()];
    const inputHash = hashOf(settings, ...blocks.map(withoutProse));
    const pages = showing.get(block.id) ?? [];
    return {
      job,
      inputHash,
      pages: pages
        .filter(({ tunes }) => tunes.length === 1)
        .map(plan => ({
          path: plan.path,
          inputHash: pageHash(plan, inputHash),
          // Computed when it is read: a book has many recipes, and a rebuild needs few of them.
          get recipe() {
            return plan.recipe;
          },
        })),
      isShared: pages.length > 1 || book.settings.print.length > 0,
    };
  });
}

/** Hash of every input of a page. `tunes`: hash of the tunes that it shows. */
export const pageHash = (plan: PagePlan, tunes: string): string => hashOf(plan.inputHash(), tunes);

const withoutProse = (block: Block): string => JSON.stringify({ ...block, body: null });
