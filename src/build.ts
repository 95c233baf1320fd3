import { join } from 'node:path';
import type { Problem } from '../shared/problem.ts';
import { buildChain, buildTune, drawTune, type StudiedTune } from './build-tune.ts';
import { tuneDataScript } from './export/tune-data.ts';
import { tuneDownloads } from './export/tune-downloads.ts';
import { type SiteFile, writeSite } from './output/write-site.ts';
import { siteAssets } from './pages/assets.ts';
import type { BuiltTune } from './pages/built-tune.ts';
import { makePages } from './pages/make-pages.ts';
import { bodyHtml } from './read/body-html.ts';
import type { AnchorBlock, Book, Page, PlanBlock, TuneBlock } from './read/book.ts';
import { readBook } from './read/read-book.ts';

/** What a build made and said. `pages` is 0 and nothing was written where `failed`. */
export interface BuildResult {
  readonly book: Book;
  readonly tunes: readonly StudiedTune[];
  readonly problems: readonly Problem[];
  readonly failed: boolean;
  readonly pages: number;
}

/** Told how far the build is: a step, and tunes done of all. */
export type Progress = (step: 'study' | 'draw', done: number, all: number) => void;

export interface BuildOptions {
  readonly root: string;
  readonly out: string;
  /** Shows the teacher's private notes, marked. Such a site is never to be published. */
  readonly isPrivate: boolean;
  readonly progress: Progress;
}

/**
 * The whole pipeline: Markdown → book → tunes → studies → scores → pages → site. Problems are
 * gathered to the end; with an error among them nothing is written and the last site stays.
 */
export async function buildSite(options: BuildOptions): Promise<BuildResult> {
  const { book, tunes, problems: found } = await studyBook(options.root, options.progress);
  const problems = [...found];
  const failed = problems.some(p => p.severity === 'error');
  if (failed) return { book, tunes, problems, failed, pages: 0 };

  const built = new Map<string, BuiltTune>();
  for (const [i, studied] of tunes.entries()) {
    options.progress('draw', i, tunes.length);
    const drawn = drawTune(studied);
    built.set(studied.block.id, drawn.built);
    problems.push(...drawn.problems);
  }
  options.progress('draw', tunes.length, tunes.length);
  const pages = makePages({
    book,
    tunes: built,
    bodyHtml,
    noteChain: block => buildChain(block, book.settings),
    isPrivate: options.isPrivate,
  });
  const publicMedia = book.media.filter(m => options.isPrivate || !book.privateMedia.includes(m));
  writeSite(options.out, [
    ...siteAssets(),
    ...(options.isPrivate ? [privateMarker] : []),
    ...tunes.flatMap(tune => tuneFiles(tune, options.isPrivate)),
    ...publicMedia.map(path => ({ path, copyOf: join(book.root, path) })),
    ...pages.map(page => ({ path: page.path, content: page.html })),
  ] satisfies SiteFile[]);
  return { book, tunes, problems, failed, pages: pages.length };
}

/** Reads a book and studies each of its tunes; writes nothing. */
export async function studyBook(
  root: string,
  progress: Progress,
): Promise<Pick<BuildResult, 'book' | 'tunes' | 'problems'>> {
  const book = await readBook(root);
  const pages = [...book.lessons, ...book.tunePages, ...book.pages];
  const blocks = tuneBlocks(pages);
  const anchors = pages.flatMap(p => p.blocks.filter((b): b is AnchorBlock => b.kind === 'anchor'));
  const plans = pages.flatMap(p => p.blocks.filter((b): b is PlanBlock => b.kind === 'plan'));
  const tunes = blocks.map((block, i) => {
    progress('study', i, blocks.length);
    const own = anchors.filter(a => a.of === block.id);
    return buildTune(block, own, plans, book.settings);
  });
  return { book, tunes, problems: [...book.problems, ...tunes.flatMap(t => t.problems)] };
}

const tuneBlocks = (pages: readonly Page[]): TuneBlock[] =>
  pages.flatMap(p => p.blocks.filter((b): b is TuneBlock => b.kind === 'tune'));

/** What stands beside the page of a tune: nothing where its rights are not known. */
function tuneFiles(studied: StudiedTune, isPrivate: boolean): SiteFile[] {
  const { block, request, study, rights } = studied;
  if (study === null || (rights === null && !isPrivate)) return [];
  const { id } = block;
  const { tune } = study;
  return [
    { path: `tunes/${id}.js`, content: tuneDataScript({ id, title: tune.title, tune, request }) },
    ...tuneDownloads(study).map(({ ending, content }) => ({
      path: `tunes/${id}.${ending}`,
      content,
    })),
  ];
}

/** Marks a folder that holds private notes, for people and for the command. */
const privateMarker: SiteFile = {
  path: 'private.txt',
  content: 'This copy shows the teacher’s private notes. It is not to be published.\n',
};
