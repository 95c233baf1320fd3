import type { Cache } from '../incremental/open-cache.ts';
import { type TuneCache, tuneCache } from '../incremental/tune-cache.ts';
import type { SiteFile } from '../output/site-file.ts';
import { attempt } from '../output/site-trouble.ts';
import { type SitePlace, stageFile } from '../output/stage-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { MadeTune, TuneNote } from '../pipeline/make-tune.ts';
import type { TuneTask } from '../pipeline/tune-jobs.ts';
import type { ReadingThread } from '../read/read-ahead.ts';
import { hintThreads, hintTunes } from './engine-hints.ts';
import { startWorkers, type TuneWorkers } from './tune-workers.ts';

/** Makes tunes, here and in worker threads. */
export interface TuneMaker {
  /**
   * Says beforehand how many tunes will have to be made at least, so that threads can start meanwhile;
   * until then they can read pages.
   */
  readonly expect: (tunes: number) => readonly ReadingThread[];
  /** What is made of tunes, in the order of the tasks, each as soon as it and those before it are there. */
  readonly make: (tasks: readonly TuneTask[], place: SitePlace) => AsyncGenerator<PlacedTune>;
  /** Study and drawings of a tune: just made, kept, or, where nothing whole is kept, made again. */
  readonly built: (task: TuneTask) => Promise<BuiltTune>;
  readonly opening: (task: TuneTask) => Promise<Opening | null>;
  readonly close: () => Promise<void>;
}

/** A tune with its files and pages, ready for the site. */
export interface PlacedTune {
  readonly note: TuneNote;
  readonly files: readonly SiteFile[];
}

/** A worker takes as long to start as some twenty tunes to make, so fewer than this many are all made here. */
const worthWorkers = 40;

/** Tunes that the pages are most likely to ask for next. */
const heldTunes = 16;

export function tuneMaker(store: Cache): TuneMaker {
  const cache = tuneCache(store);
  const held = new Map<string, BuiltTune>();
  const hold = (key: string, built: BuiltTune): void => {
    held.set(key, built);
    const [oldest] = held.keys();
    if (held.size > heldTunes && oldest !== undefined) held.delete(oldest);
  };
  const makeHere = async (task: TuneTask): Promise<MadeTune> => {
    const { makeTune } = await import('../pipeline/make-tune.ts');
    const made = makeTune(task);
    if (task.isShared) hold(task.key, made.built);
    keepTune(cache, task, made);
    return made;
  };
  let workers: TuneWorkers | null = null;
  const expect = (tunes: number): readonly ReadingThread[] => {
    if (tunes >= worthWorkers && workers === null) {
      hintThreads();
      workers = startWorkers(store.folder);
    }
    return workers?.readers() ?? [];
  };
  return {
    expect,
    async *make(tasks, place) {
      expect(tasks.length);
      const here = (task: TuneTask): Promise<PlacedTune> =>
        attempt(place.folder, async () => placeTune(await makeHere(task), place));
      if (tasks.length >= worthWorkers && workers !== null) {
        hintTunes(tasks.length);
        return yield* workers.make(tasks, place, here);
      }
      for (const task of tasks) yield await here(task);
    },
    async built(task) {
      const { key, job } = task;
      let built = held.get(key) ?? cache.built(key);
      if (built) hold(key, built);
      else ({ built } = await makeHere({ ...task, pages: [], isShared: true }));
      // The prose round the tune is no part of the key, and may have changed.
      return { ...built, block: job.block };
    },
    async opening(task) {
      const kept = cache.opening(task.key);
      return kept === undefined ? (await makeHere({ ...task, pages: [] })).opening : kept;
    },
    close: async () => workers?.close(),
  };
}

/** Stages the files of a tune. */
export const placeTune = ({ note, files }: MadeTune, place: SitePlace): PlacedTune => ({
  note,
  files: files.map(({ path, from, content }) => ({
    path,
    from,
    staged: stageFile(place, path, content),
  })),
});

/** Keeps of a tune what the next build may ask for. */
export function keepTune(cache: TuneCache, { key, isShared }: TuneTask, made: MadeTune): void {
  if (isShared) cache.keepBuilt(key, made.built);
  cache.keepOpening(key, made.opening);
}
