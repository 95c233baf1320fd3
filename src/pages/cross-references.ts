import type { AnchorBlock, Page } from '../read/book.ts';
import { type SetOnPage, setsOf } from './book-sets.ts';
import type { PageBook } from './site.ts';

/** Which pages of a book define or mention each tune and anchor. */
export interface CrossReferences {
  /** Page that defines each tune, by its id. */
  readonly definedIn: ReadonlyMap<string, Page>;
  /** Lessons that have a block about each tune, newest first, by its id. */
  readonly lessonsOf: ReadonlyMap<string, readonly Page[]>;
  /** Ids of the tunes that each page has a block about, in page order, by the page's file. */
  readonly tunesOf: ReadonlyMap<string, readonly string[]>;
  readonly anchors: ReadonlyMap<string, AnchorBlock>;
  /** Page that defines each anchor, by its id. */
  readonly anchoredIn: ReadonlyMap<string, Page>;
  /** Anchors of each tune that has any, in the order of the book, by the tune's id. */
  readonly anchorsOf: ReadonlyMap<string, readonly AnchorBlock[]>;
  /** See `setsOf`. */
  readonly sets: readonly SetOnPage[];
}

/**
 * Gathers the cross-references of every page of a book. Blocks in private notes count only in a private copy;
 * otherwise the public page of a tune would mention them.
 */
export function crossReferences(book: PageBook, isPrivate: boolean): CrossReferences {
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const blocks = pages.flatMap(p => p.blocks);
  const anchors = new Map(blocks.filter(b => b.kind === 'anchor').map(b => [b.id, b]));
  const definedIn = new Map<string, Page>();
  const anchoredIn = new Map<string, Page>();
  const tunesOf = new Map<string, readonly string[]>();
  for (const page of pages) {
    const shown = page.blocks.filter(block => isPrivate || !block.hidden);
    tunesOf.set(page.file, [...new Set(shown.flatMap(block => block.about))]);
    for (const block of page.blocks.filter(b => b.kind === 'tune')) {
      definedIn.set(block.id, page);
    }
    for (const block of page.blocks.filter(b => b.kind === 'anchor')) {
      anchoredIn.set(block.id, page);
    }
  }
  const lessonsOf = new Map([...definedIn.keys()].map(id => [id, [] as Page[]] as const));
  for (const lesson of book.lessons) {
    for (const id of tunesOf.get(lesson.file) ?? []) lessonsOf.get(id)?.push(lesson);
  }
  const anchorsOf = new Map<string, AnchorBlock[]>();
  for (const anchor of anchors.values()) {
    const beside = anchorsOf.get(anchor.of);
    if (beside) beside.push(anchor);
    else anchorsOf.set(anchor.of, [anchor]);
  }
  const sets = setsOf(book);
  return { definedIn, lessonsOf, tunesOf, anchors, anchoredIn, anchorsOf, sets };
}
