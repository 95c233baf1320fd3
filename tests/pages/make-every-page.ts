import { makePage } from '../../src/pages/make-page.ts';
import { planPages } from '../../src/pages/make-pages.ts';
import type { SiteInput } from '../../src/pages/site.ts';

/** A page of the site. `path` is from the site's root, with forward slashes. */
export interface SitePage {
  readonly path: string;
  readonly html: string;
}

/** Makes every page at once, for a book whose tunes are all at hand. */
export const makeEveryPage = (input: SiteInput): readonly SitePage[] =>
  planPages(input).map(plan => ({
    path: plan.path,
    html: plan.tunes === null ? plan.make(input) : makePage(plan.recipe, input),
  }));
