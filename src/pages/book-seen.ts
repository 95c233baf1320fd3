import { hash } from 'node:crypto';
import type { AnchorBlock, Block, Page } from '../read/book.ts';
import { blocksWithin } from './book-index.ts';
import type { PageBook } from './site.ts';
import type { NavEntry } from './site-nav.ts';

/**
 * What each page sees of the book. A page about certain tunes is given no more of the book than is
 * named here, so it is small enough to be handed to another thread, and cannot go stale: it is made
 * again when what it sees changes, and only then (`tests/cache/edits.test.ts`).
 */
export interface BookSeen {
  /** Ids of the tunes that the page's blocks name. */
  readonly mentionedOn: (page: Page) => readonly string[];
  /** Ids of the tunes that are named where it is said why passages of this tune are fixed. */
  readonly mentionedWhy: (tune: string) => readonly string[];
  /**
   * What a page about these tunes sees: itself, of the lessons before and after it the heads, and
   * what any page of the book says in its blocks about the tunes; null: a page over certain tunes only.
   */
  readonly by: (page: Page | null, tunes: readonly string[]) => Seen;
  /** Hash of the blocks of all pages, and so of all that lists say of their tunes. */
  readonly wholeHash: () => string;
}

export interface Seen {
  readonly book: () => PageBook;
  /** Hash of all of it; studies and drawings of the tunes come on top. */
  readonly inputHash: () => string;
}

export function bookSeen(book: PageBook, nav: readonly NavEntry[], isPrivate: boolean): BookSeen {
  const { settings, lessons, tunePages, pages } = book;
  const all = [...lessons, ...tunePages, ...pages];
  const anchors = new Map(
    all.flatMap(p => p.blocks.filter(isAnchor)).map(anchor => [anchor.id, anchor.of] as const),
  );
  const mentioned = new Map(all.map(page => [page, mentionsOf(page.blocks, anchors)] as const));
  const mentioning = new Map<string, Page[]>();
  for (const [page, ids] of mentioned) {
    for (const id of ids) {
      const known = mentioning.get(id);
      if (known) known.push(page);
      else mentioning.set(id, [page]);
    }
  }
  const frame = hashOf([isPrivate, settings, nav]);
  const order = new Map(all.map((page, i) => [page, i] as const));
  const blocksOf = (page: Page): string => page.hashes.blocks;
  let wholeHash: string | null = null;
  return {
    mentionedOn: page => mentioned.get(page) ?? [],
    mentionedWhy: tune =>
      (mentioning.get(tune) ?? []).flatMap(page =>
        page.blocks
          .filter(isAnchor)
          .filter(anchor => anchor.of === tune)
          .flatMap(anchor => mentionsOf(blocksWithin(anchor.body, page), anchors)),
      ),
    by(page, tunes) {
      const at = page?.kind === 'lesson' ? (order.get(page) ?? 0) : null;
      const beside = at === null ? [] : [lessons[at - 1] ?? null, lessons[at + 1] ?? null];
      const others = new Set(tunes.flatMap(id => mentioning.get(id) ?? []));
      const asSeen = (other: Page): Page => {
        if (other === page) return other;
        return { ...other, body: nothing, blocks: others.has(other) ? other.blocks : [] };
      };
      return {
        book() {
          const seen = [...new Set([page, ...beside, ...others])]
            .filter(other => other !== null)
            .toSorted((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0))
            .map(asSeen);
          return {
            settings,
            lessons: seen.filter(({ kind }) => kind === 'lesson'),
            tunePages: seen.filter(({ kind }) => kind === 'tune'),
            pages: seen.filter(({ kind }) => kind === 'page'),
          };
        },
        inputHash: () =>
          hashOf([
            frame,
            page?.hashes.whole,
            beside.map(other => other && headOf(other)),
            [...others].map(blocksOf),
          ]),
      };
    },
    wholeHash() {
      wholeHash ??= hashOf([frame, all.map(blocksOf)]);
      return wholeHash;
    },
  };
}

const hashOf = (data: object): string => hash('sha256', JSON.stringify(data), 'base64');

/** What the pages beside a lesson show of it. */
const headOf = ({ kind, slug, title, date, draft, summary }: Page): object => ({
  kind,
  slug,
  title,
  date,
  draft,
  summary,
});

const nothing: Page['body'] = { type: 'root', children: [] };

const isAnchor = (block: Block): block is AnchorBlock => block.kind === 'anchor';

/** Ids of the tunes that blocks name, by themselves or by an anchor. */
function mentionsOf(
  blocks: readonly Block[],
  anchors: ReadonlyMap<string, string>,
): readonly string[] {
  const ids = blocks.flatMap(block => [
    ...(block.kind === 'tune' ? [block.id] : []),
    ...('of' in block ? [block.of] : []),
    ...('to' in block ? [anchors.get(block.to ?? '') ?? ''] : []),
    ...('tunes' in block ? block.tunes.map(tune => tune.of) : []),
  ]);
  return [...new Set(ids.filter(id => id !== ''))];
}
