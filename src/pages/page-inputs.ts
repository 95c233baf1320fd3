import { createHash } from 'node:crypto';
import type { AnchorBlock, Block, Book, Page } from '../read/book.ts';
import { setsOf } from './book-sets.ts';
import type { TuneCard } from './tune-card.ts';

/**
 * What each page is made from, so that it is made again when that changes, and only then. A page
 * that asks for more than is named here would go stale: `tests/cache/edits.test.ts` edits a book in
 * many ways and holds every rebuilt page to a clean build.
 */
export interface PageInputs {
  /** Ids of the tunes that the page's blocks name. */
  readonly mentionedOn: (page: Page) => readonly string[];
  /**
   * The frame, the page itself, the lessons before and after it, and what any page of the book says
   * in its blocks about these tunes; their studies and drawings come on top.
   */
  readonly aboutTunes: (page: Page | null, tunes: readonly string[]) => string;
  /** Every page's blocks, and every tune's card. */
  readonly aboutAll: (cards: Iterable<TuneCard>) => string;
}

export function pageInputs(book: Book, isPrivate: boolean): PageInputs {
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const anchors = new Map(
    pages.flatMap(p => p.blocks.filter(isAnchor)).map(anchor => [anchor.id, anchor.of] as const),
  );
  const mentioned = new Map(pages.map(page => [page, mentionsOf(page.blocks, anchors)] as const));
  const mentioning = new Map<string, Page[]>();
  for (const [page, ids] of mentioned) {
    for (const id of ids) mentioning.set(id, [...(mentioning.get(id) ?? []), page]);
  }
  const frame = sum(
    JSON.stringify([
      isPrivate,
      book.settings,
      book.pages.map(headOf),
      setsOf(book).length > 0,
      book.lessons.length > 0,
    ]),
  );
  const told = onceEach((page: Page) => sum(text([headOf(page), page.blocks])));
  const whole = onceEach((page: Page) => sum(told(page) + text(page.body)));
  let all: string | null = null;
  return {
    mentionedOn: page => mentioned.get(page) ?? [],
    aboutTunes(page, tunes) {
      const at = page ? book.lessons.indexOf(page) : -1;
      const beside = at < 0 ? [] : [book.lessons[at - 1], book.lessons[at + 1]];
      const others = new Set(tunes.flatMap(id => mentioning.get(id) ?? []));
      return sum(
        JSON.stringify([
          frame,
          page && whole(page),
          beside.map(other => (other ? headOf(other) : null)),
          [...others].map(told),
        ]),
      );
    },
    aboutAll(cards) {
      all ??= sum(JSON.stringify([frame, pages.map(told), [...cards]]));
      return all;
    },
  };
}

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

const headOf = ({ kind, slug, title, date, draft, summary }: Page): object => ({
  kind,
  slug,
  title,
  date,
  draft,
  summary,
});

/** Data as text, but for where in the teacher's files it stands, which no page shows. */
const text = (data: object): string =>
  JSON.stringify(data, (key, value) =>
    key === 'place' || key === 'position' || key === 'line' ? undefined : value,
  );

const sum = (of: string): string => createHash('sha256').update(of).digest('base64');

function onceEach<K, V>(make: (key: K) => V): (key: K) => V {
  const made = new Map<K, V>();
  return key => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const value = make(key);
    made.set(key, value);
    return value;
  };
}
