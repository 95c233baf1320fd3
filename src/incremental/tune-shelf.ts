import type { OpenSite } from '../output/open-site.ts';
import type { Content } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { Opening } from '../pages/openings.ts';
import type { TuneNote } from '../pipeline/make-tune.ts';
import type { PageMakers } from '../pipeline/page-makers.ts';
import type { PageTask, TuneTask } from '../pipeline/tune-jobs.ts';
import type { PlacedTune, TuneMaker } from '../workers/tune-maker.ts';

/** The tunes of a book during a build: what was made of all of them, and each whole when asked for. */
export interface TuneShelf {
  /** Their ids, in the order of the book. */
  readonly ids: readonly string[];
  /**
   * Every tune in the order of the book, with the files that are still to be put, as soon as it and
   * those before it are made. Files that stand in the site as they should are kept there.
   */
  readonly placed: (site: Pick<OpenSite, 'keepAll' | 'place'>) => AsyncGenerator<PlacedTune>;
  /** Study and drawings of a tune that has been placed. */
  readonly built: (id: string) => Promise<BuiltTune>;
  /** Those of some tunes, for a page. */
  readonly shown: (ids: readonly string[]) => Promise<ReadonlyMap<string, BuiltTune>>;
  readonly opening: (id: string) => Promise<Opening | null>;
  /** Tells one state of these tunes from another. */
  readonly state: (ids: readonly string[]) => string;
}

interface TuneShelfInput {
  readonly maker: TuneMaker;
  /** Notes that an earlier build made, by key. */
  readonly known: ReadonlyMap<string, TuneNote>;
  /** Makes a page of a tune that is known. */
  readonly makePage: PageMakers['make'];
}

export function tuneShelf(tasks: readonly TuneTask[], input: TuneShelfInput): TuneShelf {
  const { maker, known, makePage } = input;
  const byId = new Map(tasks.map(task => [task.job.block.id, task] as const));
  const taskOf = (id: string): TuneTask => {
    const task = byId.get(id);
    if (!task) throw new Error(`there is no tune ${id} in the book`);
    return task;
  };
  /** A tune of which nothing but pages is to be made, from its kept study and drawings. */
  const standing = (task: TuneTask, keepAll: OpenSite['keepAll']): PlacedTune | null => {
    const { key, job, pages, isShared } = task;
    const note = known.get(key);
    if (!note) return null;
    const files = note.files.map(path => ({ path, from: key }));
    if (keepAll([...files, ...pages])) return { note, files: [] };
    if (!isShared || !keepAll(files)) return null;
    const make = async ({ recipe }: PageTask): Promise<Content> =>
      makePage(recipe, new Map([[job.block.id, await maker.built(task)]]));
    return {
      note,
      files: pages.map(page => ({ path: page.path, from: page.from, make: () => make(page) })),
    };
  };
  return {
    ids: [...byId.keys()],
    async *placed({ keepAll, place }) {
      const found = tasks.map(task => standing(task, keepAll));
      const made = maker.make(
        tasks.filter((_, i) => found[i] === null),
        place,
      );
      try {
        for (const tune of found) {
          const placed = tune ?? (await made.next()).value;
          if (placed) yield placed;
        }
        await made.next(); // to its end, where it lets go of its threads
      } finally {
        // Left before its end, its threads would go on staging files, and answer the next build.
        await made.return(undefined);
      }
    },
    built: id => maker.built(taskOf(id)),
    async shown(ids) {
      const tunes = new Map<string, BuiltTune>();
      for (const id of ids) tunes.set(id, await maker.built(taskOf(id)));
      return tunes;
    },
    opening: id => maker.opening(taskOf(id)),
    state: ids => ids.map(id => byId.get(id)?.key ?? '').join(' '),
  };
}
