import type { Problem } from '../../shared/problem.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import type { OpenSite } from '../output/open-site.ts';
import type { SiteFile } from '../output/site-file.ts';
import { planPages } from '../pages/make-pages.ts';
import type { TuneCard } from '../pages/tune-card.ts';
import type { Book } from '../read/book.ts';
import { wholeFiles } from './book-wide-files.ts';
import type { MadeTune, TuneSummary } from './made-tune.ts';
import { pageSchedule } from './page-schedule.ts';
import { pageTools } from './page-tools.ts';
import type { Progress } from './progress.ts';
import type { StudiedTune } from './study-job.ts';
import { tuneJobs } from './tune-job.ts';
import type { TuneSource } from './tune-source.ts';
import { type TuneTask, tuneTasks } from './tune-task.ts';

/*
 * The whole pipeline, for one tune and for a book: read, study, engrave, render, write. It computes and
 * remembers nothing. Results of an earlier build come in through a `TuneSource`, and a site skips each
 * file that it has already under the same `inputHash`. Each step imports its libraries when it first runs.
 */

/** A book with the studies of its tunes. */
export interface StudiedBook {
  readonly book: Book;
  readonly tunes: readonly StudiedTune[];
  /** Those of the book, then those of its tunes. */
  readonly problems: readonly Problem[];
}

/** Reads the book in the folder `root` and studies each of its tunes. It draws and writes nothing. */
export async function studyBook(root: string, progress: Progress): Promise<StudiedBook> {
  const { readBook } = await import('../read/read-book.ts');
  return studyTunes(await readBook(root), progress);
}

/** Studies each tune of a book that has been read, private blocks left out. */
export async function studyTunes(book: Book, progress: Progress): Promise<StudiedBook> {
  const { studyJob } = await import('./study-job.ts');
  const jobs = tuneJobs(book, false);
  const tunes = jobs.map((job, i) => {
    progress('study', i, jobs.length);
    return studyJob(job);
  });
  return { book, tunes, problems: [...book.problems, ...tunes.flatMap(t => t.problems)] };
}

/**
 * Studies and engraves a tune, and renders its files and the pages that show no other tune. Never throws
 * for a book's defects: they are among the problems of the summary.
 */
export async function makeTune({ job, inputHash, pages }: TuneTask): Promise<MadeTune> {
  const { studyJob } = await import('./study-job.ts');
  const { drawTune } = await import('./draw-tune.ts');
  const { openingIn, summaryOf, tuneFiles } = await import('./tune-files.ts');
  const words = wordsFor(job.settings.language, job.settings.noteNames);
  const studied = studyJob(job);
  const { built, problems } = drawTune(studied, words);
  const beside = tuneFiles(studied, job, words).map(file => ({ ...file, inputHash }));
  const { render } = await pageTools(job.settings, job.isPrivate);
  const tunes = new Map([[job.block.id, built]]);
  const rendered = pages.map(({ recipe, ...page }) => ({
    ...page,
    content: render(recipe, tunes),
  }));
  return {
    summary: summaryOf(built, job, words, beside, [...studied.problems, ...problems]),
    built,
    opening: openingIn(built, job),
    files: [...beside, ...rendered],
  };
}

/** What a site is made with and without. */
export interface SiteOptions {
  /** Shows the teacher's private notes, marked. */
  readonly isPrivate: boolean;
  /** Leaves out the PDFs and the zip, which take longest. */
  readonly isQuick: boolean;
  readonly progress: Progress;
}

/** The result of making a book's site, besides its files. */
export interface MadeSite {
  readonly pages: number;
  /** In the order of the book. */
  readonly tunes: readonly TuneSummary[];
  /** Problems that belong to no single tune. */
  readonly problems: readonly Problem[];
}

/**
 * Makes the tunes, pages and files of a book, and puts them into the site; the caller commits or abandons
 * it. `openTunes` decides which tunes are made and where. Throws `SiteError` where the disk refuses.
 */
export async function makeSite(
  book: Book,
  { isPrivate, isQuick, progress }: SiteOptions,
  openTunes: (tasks: readonly TuneTask[]) => TuneSource,
  site: OpenSite,
): Promise<MadeSite> {
  const putAll = async (files: Iterable<SiteFile>): Promise<void> => {
    for (const file of files) await site.put(file);
  };
  const cards = new Map<string, TuneCard>();
  const summaries: TuneSummary[] = [];
  const problems: Problem[] = [];
  const plans = planPages({ book, cards, isPrivate });
  const tunes = openTunes(tuneTasks(book, plans, isPrivate));
  const pages = pageSchedule(plans, tunes, () => pageTools(book.settings, isPrivate));
  await putAll(pages.withoutTunes);
  for await (const { summary, files } of tunes.made(site)) {
    progress('tunes', summaries.length, tunes.ids.length);
    summaries.push(summary);
    cards.set(summary.card.id, summary.card);
    await putAll(files);
    await putAll(pages.endingWith(summary.card.id));
  }
  progress('tunes', tunes.ids.length, tunes.ids.length);
  await putAll(pages.lists());
  const say = (found: readonly Problem[]): void => void problems.push(...found);
  await putAll(wholeFiles({ book, isPrivate, isQuick, cards, tunes, site, say }));
  return { pages: plans.length, tunes: summaries, problems };
}
