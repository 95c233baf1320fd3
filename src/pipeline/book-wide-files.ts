import { join } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { keepSiteScript } from '../output/keep-site-script.ts';
import type { OpenSite } from '../output/open-site.ts';
import type { SiteFile } from '../output/site-file.ts';
import { aroundSite } from '../pages/around-site.ts';
import { offlineScript, siteAssets } from '../pages/assets.ts';
import { entriesScript } from '../pages/finder-view.ts';
import { searchEntries } from '../pages/lists-view.ts';
import { openingFiles, openingsScript } from '../pages/openings.ts';
import type { TuneCards } from '../pages/tune-card.ts';
import type { Book } from '../read/book.ts';
import { printFiles } from './print-files.ts';
import { siteZipFile } from './site-zip-file.ts';
import type { TuneSource } from './tune-source.ts';

/** What the files for the whole book are made from. */
export interface BookFilesInput {
  readonly book: Book;
  readonly isPrivate: boolean;
  /** Leaves out the PDFs and the zip. */
  readonly isQuick: boolean;
  /** The entry of every tune in lists, by id, in the order of the book. */
  readonly cards: TuneCards;
  /** Studies and drawings are read back one at a time; keep no reference to them, since each takes megabytes. */
  readonly tunes: Pick<TuneSource, 'built' | 'opening' | 'inputHash'>;
  /** The files that the site contains so far, with their hashes and bytes. */
  readonly site: Pick<OpenSite, 'written' | 'read'>;
  /** Called with the problems that are found while these files are made. */
  readonly say: (problems: readonly Problem[]) => void;
}

/** The files that depend on no tune: styles, scripts, fonts, recordings and pictures. */
export function plainFiles(book: Book, isPrivate: boolean): readonly SiteFile[] {
  const media = book.media.filter(path => isPrivate || !book.privateMedia.includes(path));
  return [
    ...siteAssets(book.settings),
    ...(isPrivate ? [privateMarker] : []),
    ...media.map(path => ({ path, copyOf: join(book.root, path) })),
  ];
}

/**
 * Yields the files about the whole book, to be put into the site after all pages, since some of them list
 * or contain what the site has by then. A file that is expensive to make has an `inputHash`, and is made
 * again only when that changes.
 */
export function* wholeFiles(input: BookFilesInput): Generator<SiteFile> {
  const { book, isPrivate, isQuick, cards, tunes, site, say } = input;
  const ids = [...cards.keys()];
  const words = wordsFor(book.settings.language, book.settings.noteNames);
  yield {
    path: 'tunes/entries.js',
    inputHash: tunes.inputHash(ids),
    make: () => entriesScript(searchEntries(input, words)),
  };
  for (const { path, ids: those } of openingFiles(ids)) {
    yield { path, inputHash: tunes.inputHash(those), make: () => openingsOf(those, input) };
  }
  yield* aroundSite(book, ids);
  if (!isQuick) {
    yield* printFiles({
      book,
      ids,
      readable: id => (cards.get(id)?.parts.length ?? 0) > 0,
      tunes,
      pictures: picturesOf(site),
      say,
    });
  }
  // These two come last: one lists all files of the site, the other contains them.
  yield { path: 'keep-site.js', content: keepSiteScript(site.written, offlineScript()) };
  if (!isPrivate && !isQuick) yield siteZipFile(book, site);
}

/** Paths and hashes of the recordings and pictures in the site, as one text. */
const picturesOf = ({ written }: BookFilesInput['site']): string =>
  [...written]
    .flatMap(([path, { hash }]) => (path.startsWith('media/') ? [`${path} ${hash}`] : []))
    .join(' ');

/** A script with the first phrases of some tunes, without the tunes whose notes may not be shown. */
async function openingsOf(
  ids: readonly string[],
  { tunes }: Pick<BookFilesInput, 'tunes'>,
): Promise<string> {
  const openings = await Promise.all(ids.map(tunes.opening));
  return openingsScript(openings.filter(opening => opening !== null));
}

/** A file that marks a folder with private notes, for people and for the command. */
const privateMarker: SiteFile = {
  path: 'private.txt',
  content: 'This copy shows the teacher’s private notes. It is not to be published.\n',
};
