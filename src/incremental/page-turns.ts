import type { SiteFile } from '../output/site-file.ts';
import type { PagePlan } from '../pages/make-pages.ts';
import type { PageMakers } from '../pipeline/page-makers.ts';
import type { TuneShelf } from './tune-shelf.ts';
import { pageFrom } from './tune-tasks.ts';

/** The pages of a book that show no tune, or more than one, by when they can be made. */
export interface PageTurns {
  /** Those that show no tune. */
  readonly first: readonly SiteFile[];
  /** Those whose last tune, in the order of the book, is this one. */
  readonly after: (tune: string) => readonly SiteFile[];
  /** Those over the cards of all tunes; ask for them when every card is there. */
  readonly last: () => readonly SiteFile[];
}

interface PageTurnsInput {
  readonly tunes: TuneShelf;
  /** Hash of the program, since it makes the pages. */
  readonly program: string;
  readonly makers: PageMakers;
}

export function pageTurns(
  plans: readonly PagePlan[],
  { tunes, program, makers }: PageTurnsInput,
): PageTurns {
  const at = new Map(tunes.ids.map((id, i) => [id, i] as const));
  const byLast = new Map<number, PagePlan[]>();
  for (const plan of plans) {
    if (plan.tunes === null || plan.tunes.length === 1) continue;
    const last = Math.max(-1, ...plan.tunes.map(id => at.get(id) ?? -1));
    byLast.set(last, [...(byLast.get(last) ?? []), plan]);
  }
  const fileOf = (plan: PagePlan): SiteFile => ({
    path: plan.path,
    from: pageFrom(program, plan, tunes.state(plan.tunes ?? [])),
    async make() {
      if (plan.tunes !== null) return makers.make(plan.recipe, await tunes.shown(plan.tunes));
      await makers.load();
      return plan.make();
    },
  });
  return {
    first: (byLast.get(-1) ?? []).map(fileOf),
    after: tune => (byLast.get(at.get(tune) ?? -1) ?? []).map(fileOf),
    last: () => plans.filter(plan => plan.tunes === null).map(fileOf),
  };
}
