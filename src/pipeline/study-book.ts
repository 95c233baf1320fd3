import type { Problem } from '../../shared/problem.ts';
import type { Progress } from '../incremental/open-builds.ts';
import type { Book } from '../read/book.ts';
import { readBook } from '../read/read-book.ts';
import { buildTune, type StudiedTune } from './build-tune.ts';
import { tuneJobs } from './tune-jobs.ts';

/** A book with all its studies, held at once. */
export interface StudiedBook {
  readonly book: Book;
  readonly tunes: readonly StudiedTune[];
  readonly problems: readonly Problem[];
}

/** Reads a book and studies each of its tunes; draws and writes nothing. */
export async function studyBook(root: string, progress: Progress): Promise<StudiedBook> {
  return studyTunes(await readBook(root), progress);
}

/** Studies each tune of a book as read. */
export function studyTunes(book: Book, progress: Progress): StudiedBook {
  const jobs = tuneJobs(book, false);
  const tunes = jobs.map(({ block, anchors, plans, clips, drills, settings }, i) => {
    progress('study', i, jobs.length);
    return buildTune(block, anchors, plans, clips, drills, settings);
  });
  return { book, tunes, problems: [...book.problems, ...tunes.flatMap(t => t.problems)] };
}
