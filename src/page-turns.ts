import { cacheKey } from './cache/open-cache.ts';
import type { SiteFile } from './output/site-file.ts';
import type { PagePlan } from './pages/make-pages.ts';
import type { TuneShelf } from './tune-shelf.ts';

/** The pages of a book by when they can be made: as soon as their last tune is there. */
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
  /** Loads what pages are made with. */
  readonly load: () => Promise<void>;
}

export function pageTurns(
  plans: readonly PagePlan[],
  { tunes, program, load }: PageTurnsInput,
): PageTurns {
  const at = new Map(tunes.ids.map((id, i) => [id, i] as const));
  const byLast = new Map<number, PagePlan[]>();
  for (const plan of plans) {
    if (plan.tunes === null) continue;
    const last = Math.max(-1, ...plan.tunes.map(id => at.get(id) ?? -1));
    byLast.set(last, [...(byLast.get(last) ?? []), plan]);
  }
  const file = ({ path, tunes: ids, from, make }: PagePlan): SiteFile => ({
    path,
    from: cacheKey(program, from(), ids ? tunes.state(ids) : ''),
    async make() {
      await load();
      return make(await tunes.shown(ids ?? []));
    },
  });
  return {
    first: (byLast.get(-1) ?? []).map(file),
    after: tune => (byLast.get(at.get(tune) ?? -1) ?? []).map(file),
    last: () => plans.filter(plan => plan.tunes === null).map(file),
  };
}
