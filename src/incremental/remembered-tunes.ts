import type { OpenSite } from '../output/open-site.ts';
import type { StagedTune, TuneSummary } from '../pipeline/made-tune.ts';
import { pageTools } from '../pipeline/page-tools.ts';
import type { TuneSource } from '../pipeline/tune-source.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';
import type { TuneMaker } from '../workers/tune-maker.ts';
import type { TuneStore } from './tune-store.ts';

interface Remembered {
  /** Summaries of the tunes in the site, by input hash. */
  readonly summaries: ReadonlyMap<string, TuneSummary>;
  readonly store: TuneStore;
  readonly maker: TuneMaker;
}

/**
 * The source of a book's tunes during a build. A tune is taken over if its input hash is known and its files
 * are in the site as the last build left them; `maker` makes the others.
 */
export function rememberedTunes(
  tasks: readonly TuneTask[],
  { summaries, store, maker }: Remembered,
): TuneSource {
  const byId = new Map(tasks.map(task => [task.job.block.id, task] as const));
  const taskOf = (id: string): TuneTask => {
    const task = byId.get(id);
    if (!task) throw new Error(`there is no tune ${id} in the book`);
    return task;
  };
  const again = (task: TuneTask) => maker.makeOne({ ...task, pages: [], isShared: true });
  const builtOf = async (task: TuneTask) => {
    const built = store.built(task.inputHash) ?? (await again(task)).built;
    // The input hash leaves out the prose around the tune, which may have changed.
    return { ...built, block: task.job.block };
  };
  /** A tune that is taken over, with those of its pages that must be rendered again; null where it must be made. */
  const standing = (
    task: TuneTask,
    keepUnchanged: OpenSite['keepUnchanged'],
  ): StagedTune | null => {
    const { job, inputHash, pages, isShared } = task;
    const summary = summaries.get(inputHash);
    if (!summary) return null;
    const files = summary.files.map(path => ({ path, inputHash }));
    if (keepUnchanged([...files, ...pages])) return { summary, files: [] };
    if (!isShared || !keepUnchanged(files)) return null;
    const remade = pages.map(page => ({
      path: page.path,
      inputHash: page.inputHash,
      make: async () => {
        const { render } = await pageTools(job.settings, job.isPrivate);
        return render(page.recipe, new Map([[job.block.id, await builtOf(task)]]));
      },
    }));
    return { summary, files: remade };
  };
  return {
    ids: [...byId.keys()],
    async *made({ keepUnchanged, place }) {
      const found = tasks.map(task => standing(task, keepUnchanged));
      const made = maker.make(
        tasks.filter((_, i) => found[i] === null),
        place,
      );
      try {
        for (const tune of found) {
          const staged = tune ?? (await made.next()).value;
          if (staged) yield staged;
        }
        await made.next(); // runs the generator to its end, where it removes its listeners from the threads
      } finally {
        // Where the caller stops early, the threads must end, or they would go on staging files and answer the next build.
        await made.return(undefined);
      }
    },
    built: id => builtOf(taskOf(id)),
    async opening(id) {
      const kept = store.opening(taskOf(id).inputHash);
      return kept === undefined ? (await again(taskOf(id))).opening : kept;
    },
    inputHash: ids => ids.map(id => taskOf(id).inputHash).join(' '),
  };
}
