import type { BuiltTune } from '../pages/built-tune.ts';
import { makePage, type PageRecipe } from '../pages/make-page.ts';
import type { SiteInput } from '../pages/site.ts';
import type { Book } from '../read/book.ts';

/** What pages are made with from other stages, loaded when the first page is made. */
export interface PageMakers extends Pick<SiteInput, 'bodyHtml' | 'noteChain'> {
  /** Loads the libraries behind them; a build that makes no page goes without. */
  readonly load: () => Promise<void>;
  /** A page about certain tunes, in pieces. */
  readonly make: (
    recipe: PageRecipe,
    tunes: ReadonlyMap<string, BuiltTune>,
  ) => Promise<readonly string[]>;
}

export function pageMakers(book: Book, isPrivate: boolean): PageMakers {
  let bodyHtml: SiteInput['bodyHtml'] = notLoaded;
  let noteChain: SiteInput['noteChain'] = notLoaded;
  let loading: Promise<void> | null = null;
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const hasChains = pages.some(page => page.blocks.some(block => block.kind === 'notes'));
  const loadAll = async (): Promise<void> => {
    ({ bodyHtml } = await import('../read/body-html.ts'));
    if (!hasChains) return;
    const { buildChain } = await import('./build-tune.ts');
    noteChain = block => buildChain(block, book.settings);
  };
  const load = (): Promise<void> => {
    loading ??= loadAll();
    return loading;
  };
  return {
    load,
    bodyHtml: (...body) => bodyHtml(...body),
    noteChain: block => noteChain(block),
    async make(recipe, tunes) {
      await load();
      return makePage(recipe, { bodyHtml, noteChain, isPrivate, tunes });
    },
  };
}

const notLoaded = (): never => {
  throw new Error('a page is made before what makes it is loaded');
};
