import type { BuiltTune } from '../pages/built-tune.ts';
import type { PageRecipe } from '../pages/make-page.ts';
import type { PageTools } from '../pages/site.ts';
import type { BookSettings } from '../read/book.ts';

/** Renders pages about certain tunes, and holds what every page is rendered with. */
export interface PageRenderer extends PageTools {
  /** The page as HTML, from the tunes that its recipe names. */
  readonly render: (recipe: PageRecipe, tunes: ReadonlyMap<string, BuiltTune>) => string;
}

/** Loads what pages are rendered with: a build that renders none goes without. */
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
