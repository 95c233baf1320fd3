import { hash } from 'node:crypto';
import { got } from '../../shared/must.ts';
import type { AnchorBlock, Block, Page } from '../read/book.ts';
import { blocksWithin } from './blocks-within.ts';
import type { PageBook } from './site.ts';
import type { NavEntry } from './site-nav.ts';

/**
 * What each page of the site depends on. A page about certain tunes gets only the part of the book that is
 * named here. So it is small enough to send to a worker thread, and a page is made again exactly when one of
 * its inputs has changed (`tests/cache/edits.test.ts`).
 */
export interface PageDependencies {
  /** Ids of the tunes that the page's blocks name. */
  readonly tunesOn: (page: Page) => readonly string[];
  /** Ids of the tunes that the reasons of a tune's anchors mention. */
  readonly tunesInReasons: (tune: string) => readonly string[];
  /**
   * Inputs of a page about these tunes: the page itself, the heads of the lessons before and after it, and
   * the blocks of every page that names one of the tunes. `page` is null for a page over tunes alone.
   */
  readonly inputsOf: (page: Page | null, tunes: readonly string[]) => PageInputs;
  /** Hash of the blocks of every page, from which all lists of tunes follow. Computed once. */
  readonly listHash: () => string;
}

/** The part of a book that one page is made from. */
export interface PageInputs {
  readonly book: () => PageBook;
  /** Hash of every input of this page but the studies and drawings of its tunes. */
  readonly inputHash: () => string;
}

/** Finds what the pages of a book depend on. */
export function pageDependencies(
  book: PageBook,
  nav: readonly NavEntry[],
  isPrivate: boolean,
): PageDependencies {
  const { settings, lessons, tunePages, pages } = book;
  const all = [...lessons, ...tunePages, ...pages];
  const tunesOn = new Map(all.map(page => [page.file, tunesNamed(page.blocks)] as const));
  const pagesNaming = new Map<string, Page[]>();
  for (const page of all) {
    for (const id of got(tunesOn.get(page.file), page.file)) {
      const known = pagesNaming.get(id);
      if (known) known.push(page);
      else pagesNaming.set(id, [page]);
    }
  }
  const frame = hashOf([isPrivate, settings, nav]);
  const order = new Map(all.map((page, i) => [page.file, i] as const));
  const placeOf = ({ file }: Page): number => got(order.get(file), file);
  const blocksHash = (page: Page): string => page.hashes.blocks;
  let listHash: string | null = null;
  return {
    tunesOn: page => got(tunesOn.get(page.file), page.file),
    tunesInReasons: tune =>
      (pagesNaming.get(tune) ?? []).flatMap(page =>
        anchorsOf(tune, page).flatMap(anchor => tunesNamed(blocksWithin(anchor.body, page))),
      ),
    inputsOf(page, tunes) {
      const at = page?.kind === 'lesson' ? placeOf(page) : null;
      const beside = at === null ? [] : [lessons[at - 1] ?? null, lessons[at + 1] ?? null];
      const others = new Set(tunes.flatMap(id => pagesNaming.get(id) ?? []));
      const asInput = (other: Page): Page => {
        if (other === page) return other;
        return { ...other, body: emptyBody, blocks: others.has(other) ? other.blocks : [] };
      };
      return {
        book() {
          const inputs = [...new Set([page, ...beside, ...others])]
            .filter(other => other !== null)
            .toSorted((a, b) => placeOf(a) - placeOf(b))
            .map(asInput);
          return {
            settings,
            lessons: inputs.filter(({ kind }) => kind === 'lesson'),
            tunePages: inputs.filter(({ kind }) => kind === 'tune'),
            pages: inputs.filter(({ kind }) => kind === 'page'),
          };
        },
        inputHash: () =>
          hashOf([
            frame,
            page?.hashes.whole,
            beside.map(other => other && headOf(other)),
            [...others].map(blocksHash),
          ]),
      };
    },
    listHash() {
      listHash ??= hashOf([frame, all.map(blocksHash)]);
      return listHash;
    },
  };
}

const hashOf = (data: object): string => hash('sha256', JSON.stringify(data), 'base64');

/** What the pages beside a lesson show of it. */
const headOf = ({ kind, slug, title, date, unfinished, summary }: Page): object => ({
  kind,
  slug,
  title,
  date,
  unfinished,
  summary,
});

const emptyBody: Page['body'] = { type: 'root', children: [] };

const anchorsOf = (tune: string, page: Page): readonly AnchorBlock[] =>
  page.blocks.filter(block => block.kind === 'anchor').filter(anchor => anchor.of === tune);

/** Ids of the tunes that blocks name, each once. */
const tunesNamed = (blocks: readonly Block[]): readonly string[] => [
  ...new Set(blocks.flatMap(block => block.about)),
];
