import type { TuneStore } from '../incremental/tune-store.ts';
import { withSiteErrors } from '../output/site-error.ts';
import { type SitePlace, stageFile } from '../output/stage-file.ts';
import type { MadeTune, StagedTune } from '../pipeline/made-tune.ts';
import { makeTune } from '../pipeline/pipeline.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';
import type { TuneThreads } from './tune-threads.ts';

/** Makes tunes, in this thread or in several, and keeps what later pages and builds may ask for. */
export interface TuneMaker {
  /** What is made of tunes, in the order of the tasks, each as soon as it and those before it are there. */
  readonly make: (tasks: readonly TuneTask[], place: SitePlace) => AsyncGenerator<StagedTune>;
  /** Makes one tune here and stages none of its files. */
  readonly makeOne: (task: TuneTask) => Promise<MadeTune>;
  readonly close: () => Promise<void>;
}

/** A thread takes as long to start as some twenty tunes to make, so fewer than this many are all made here. */
const worthThreads = 40;

/** `start`: starts the threads; null where there are none to start. */
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

/** Stages the files of a tune. */
export const stageTune = ({ summary, files }: MadeTune, place: SitePlace): StagedTune => ({
  summary,
  files: files.map(({ path, inputHash, content }) => ({
    path,
    inputHash,
    staged: stageFile(place, path, content),
  })),
});
