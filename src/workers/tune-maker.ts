import type { TuneStore } from '../incremental/tune-store.ts';
import { withSiteErrors } from '../output/site-error.ts';
import { type SitePlace, stageFile } from '../output/stage-file.ts';
import type { MadeTune, StagedTune } from '../pipeline/made-tune.ts';
import { makeTune } from '../pipeline/pipeline.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';
import type { TuneThreads } from './tune-threads.ts';

/** Makes tunes, in this thread or in several, and stores what later pages and builds need. */
export interface TuneMaker {
  /**
   * Makes tunes and stages their files; yields them in the order of the tasks, each as soon as it and those
   * before it are ready. Throws `SiteError` where a file cannot be written.
   */
  readonly make: (tasks: readonly TuneTask[], place: SitePlace) => AsyncGenerator<StagedTune>;
  /** Makes one tune in this thread and stages no file. */
  readonly makeOne: (task: TuneTask) => Promise<MadeTune>;
  /** Ends the threads. */
  readonly close: () => Promise<void>;
}

/** Fewer tunes than this are made in this thread: starting another takes as long as making some twenty. */
const worthThreads = 40;

/** Opens a maker. `start` starts the threads when they are first worth it; it returns null where there are none. */
export function tuneMaker(store: TuneStore, start: () => TuneThreads | null): TuneMaker {
  let threads: TuneThreads | null = null;
  const makeOne = async (task: TuneTask): Promise<MadeTune> => {
    const made = await makeTune(task);
    store.keep(task, made);
    return made;
  };
  return {
    makeOne,
    async *make(tasks, place) {
      const here = (task: TuneTask): Promise<StagedTune> =>
        withSiteErrors(place.folder, async () => stageTune(await makeOne(task), place));
      if (tasks.length >= worthThreads) threads ??= start();
      if (tasks.length >= worthThreads && threads) yield* threads.make(tasks, place, here);
      else for (const task of tasks) yield await here(task);
    },
    close: async () => threads?.close(),
  };
}

/** Writes the files of a tune into the staging folder. */
export const stageTune = ({ summary, files }: MadeTune, place: SitePlace): StagedTune => ({
  summary,
  files: files.map(({ path, inputHash, content }) => ({
    path,
    inputHash,
    staged: stageFile(place, path, content),
  })),
});
