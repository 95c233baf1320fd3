import type { SiteInput } from './pages/site.ts';
import type { Book } from './read/book.ts';

/** What pages are made with from other stages. */
export interface PageMakers extends Pick<SiteInput, 'bodyHtml' | 'noteChain'> {
  /** Loads the libraries behind them; a build that makes no page goes without. */
  readonly load: () => Promise<void>;
}

export function pageMakers(book: Book): PageMakers {
  let bodyHtml: SiteInput['bodyHtml'] = notLoaded;
  let noteChain: SiteInput['noteChain'] = notLoaded;
  let loading: Promise<void> | null = null;
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const hasChains = pages.some(page => page.blocks.some(block => block.kind === 'notes'));
  const load = async (): Promise<void> => {
    ({ bodyHtml } = await import('./read/body-html.ts'));
    if (!hasChains) return;
    const { buildChain } = await import('./build-tune.ts');
    noteChain = block => buildChain(block, book.settings);
  };
  return {
    load: () => {
      loading ??= load();
      return loading;
    },
    bodyHtml: (...body) => bodyHtml(...body),
    noteChain: block => noteChain(block),
  };
}

const notLoaded = (): never => {
  throw new Error('a page is made before what makes it is loaded');
};
