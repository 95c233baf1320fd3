import type { AnchorBlock, Block, Page, TuneBlock } from '../read/book.ts';
import { type SetOnPage, setsOf } from './book-sets.ts';
import type { PageBook } from './site.ts';

/** Where things stand in a book. */
export interface BookIndex {
  /** Page that defines each tune, by its id. */
  readonly definedIn: ReadonlyMap<string, Page>;
  /** Lessons that have a block about each tune, newest first, by its id. */
  readonly lessonsOf: ReadonlyMap<string, readonly Page[]>;
  /** Ids of the tunes of each page, in the order in which they first come. */
  readonly tunesOf: ReadonlyMap<Page, readonly string[]>;
  readonly anchors: ReadonlyMap<string, AnchorBlock>;
  /** Page that fixes each anchor, by its id. */
  readonly anchoredIn: ReadonlyMap<string, Page>;
  /** Anchors of each tune that has any, in the order of the book, by the tune's id. */
  readonly anchorsOf: ReadonlyMap<string, readonly AnchorBlock[]>;
  /** See `setsOf`. */
  readonly sets: readonly SetOnPage[];
}

/**
 * Looks through every page of the book. What only stands in a private note counts only in a
 * private copy: otherwise the public page of a tune would tell of it.
 */
export function indexBook(book: PageBook, isPrivate: boolean): BookIndex {
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const blocks = pages.flatMap(p => p.blocks);
  const anchors = new Map(
    blocks.filter((b): b is AnchorBlock => b.kind === 'anchor').map(b => [b.id, b]),
  );
  const definedIn = new Map<string, Page>();
  const anchoredIn = new Map<string, Page>();
  const tunesOf = new Map<Page, readonly string[]>();
  for (const page of pages) {
    const shown = isPrivate ? page.blocks : publicBlocks(page);
    tunesOf.set(page, [...new Set(shown.flatMap(b => tunesOfBlock(b, anchors)))]);
    for (const block of page.blocks.filter((b): b is TuneBlock => b.kind === 'tune')) {
      definedIn.set(block.id, page);
    }
    for (const block of page.blocks.filter((b): b is AnchorBlock => b.kind === 'anchor')) {
      anchoredIn.set(block.id, page);
    }
  }
  const lessonsOf = new Map([...definedIn.keys()].map(id => [id, [] as Page[]] as const));
  for (const lesson of book.lessons) {
    for (const id of tunesOf.get(lesson) ?? []) lessonsOf.get(id)?.push(lesson);
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

function tunesOfBlock(block: Block, anchors: ReadonlyMap<string, AnchorBlock>): readonly string[] {
  switch (block.kind) {
    case 'tune':
      return [block.id];
    case 'show-tune':
    case 'anchor':
    case 'map':
    case 'drill':
    case 'clip':
      return [block.of];
    case 'plan':
      return [anchors.get(block.to)?.of ?? []].flat();
    case 'set':
      return block.tunes.map(tune => tune.of);
    default:
      return [];
  }
}

/** Blocks that do not stand in a private note, at any depth. */
function publicBlocks(page: Page): readonly Block[] {
  const hidden = new Set(
    page.blocks.flatMap(b => (b.kind === 'private' ? blocksWithin(b.body, page) : [])),
  );
  return page.blocks.filter(b => !hidden.has(b));
}

interface BodyNode {
  readonly properties?: { readonly dataBlock?: unknown };
  readonly children?: readonly object[];
}

/** The blocks of a page that stand within a body of one of them, at any depth. */
export function blocksWithin(node: BodyNode, page: Page): readonly Block[] {
  const index = node.properties?.dataBlock;
  const own = index === undefined ? undefined : page.blocks[Number(index)];
  const inner = own && 'body' in own ? blocksWithin(own.body as BodyNode, page) : [];
  const below = (node.children ?? []).flatMap(child => blocksWithin(child as BodyNode, page));
  return own ? [own, ...inner, ...below] : below;
}
