import type { BuiltTune } from '../pages/built-tune.ts';
import type { PageRecipe } from '../pages/make-page.ts';
import type { PageTools } from '../pages/site.ts';
import type { BookSettings } from '../read/book.ts';

/** The functions that every page is rendered with, and `render` itself. */
export interface PageRenderer extends PageTools {
  /** Returns a page as HTML. `tunes`: those that its recipe names, by id. */
  readonly render: (recipe: PageRecipe, tunes: ReadonlyMap<string, BuiltTune>) => string;
}

/** Imports what pages are rendered with when the first page is rendered: a build without one does not load it. */
export async function pageTools(settings: BookSettings, isPrivate: boolean): Promise<PageRenderer> {
  const { bodyHtml } = await import('../read/body-html.ts');
  const { makePage } = await import('../pages/make-page.ts');
  const { noteChain } = await import('./note-chain.ts');
  const tools: PageTools = { bodyHtml, noteChain: block => noteChain(block, settings) };
  return {
    ...tools,
    render: (recipe, tunes) => makePage(recipe, { ...tools, isPrivate, tunes }),
  };
}
