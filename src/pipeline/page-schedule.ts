import type { SiteFile } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { ListPlan, PagePlan, ShowPlan } from '../pages/make-pages.ts';
import type { PageRenderer } from './page-tools.ts';
import type { TuneSource } from './tune-source.ts';
import { pageHash } from './tune-task.ts';

/**
 * The pages that show no tune, or more than one, by when they can be rendered. A page is rendered when
 * the last of its tunes is there, from studies and drawings read back, so that none is held for longer.
 */
export interface PageSchedule {
  readonly withoutTunes: readonly SiteFile[];
  /** Those whose last tune, in the order of the book, is this one. */
  readonly endingWith: (tune: string) => readonly SiteFile[];
  /** Those over the cards of all tunes; ask for them when every card is there. */
  readonly lists: () => readonly SiteFile[];
}

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
    // Whoever makes a tune renders the pages that show it alone.
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
