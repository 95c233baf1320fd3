import type { SiteFile } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { ListPlan, PagePlan, ShowPlan } from '../pages/make-pages.ts';
import type { PageRenderer } from './page-tools.ts';
import type { TuneSource } from './tune-source.ts';
import { pageHash } from './tune-task.ts';

/**
 * The order in which pages are rendered that show no tune, or more than one. A page is rendered as soon as
 * the last of its tunes is made, from studies and drawings that are read back then, so that they are in
 * memory for one page only. `makeTune` renders the pages that show a single tune.
 */
export interface PageSchedule {
  readonly withoutTunes: readonly SiteFile[];
  /** The pages whose last tune, in the order of the book, is this one. */
  readonly endingWith: (tune: string) => readonly SiteFile[];
  /** The pages that list all tunes; call it when every card is there. */
  readonly lists: () => readonly SiteFile[];
}

/** Makes the schedule of a book's pages. Throws where a page shows a tune that is not in the book. */
export function pageSchedule(
  plans: readonly PagePlan[],
  tunes: TuneSource,
  tools: () => Promise<PageRenderer>,
): PageSchedule {
  const order = new Map(tunes.ids.map((id, i) => [id, i] as const));
  const place = (id: string): number => {
    const at = order.get(id);
    if (at === undefined) throw new Error(`a page shows the tune ${id}, which is not in the book`);
    return at;
  };
  const byLast = new Map<number, ShowPlan[]>();
  for (const plan of plans) {
    // `makeTune` renders the pages that show one tune.
    if (plan.tunes === null || plan.tunes.length === 1) continue;
    const last = Math.max(-1, ...plan.tunes.map(place));
    byLast.set(last, [...(byLast.get(last) ?? []), plan]);
  }
  const listFile = (plan: ListPlan): SiteFile => ({
    path: plan.path,
    inputHash: pageHash(plan, tunes.inputHash(tunes.ids)),
    make: async () => plan.make(await tools()),
  });
  const showFile = (plan: ShowPlan): SiteFile => ({
    path: plan.path,
    inputHash: pageHash(plan, tunes.inputHash(plan.tunes)),
    async make() {
      const shown = new Map<string, BuiltTune>();
      for (const id of plan.tunes) shown.set(id, await tunes.built(id));
      return (await tools()).render(plan.recipe, shown);
    },
  });
  return {
    withoutTunes: (byLast.get(-1) ?? []).map(showFile),
    endingWith: tune => (byLast.get(place(tune)) ?? []).map(showFile),
    lists: () => plans.filter(plan => plan.tunes === null).map(listFile),
  };
}
