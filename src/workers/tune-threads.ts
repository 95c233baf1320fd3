import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { at, got } from '../../shared/must.ts';
import { asSiteError } from '../output/site-error.ts';
import type { SitePlace } from '../output/stage-file.ts';
import { packageRoot } from '../pages/package-root.ts';
import type { StagedTune } from '../pipeline/made-tune.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';

/** Threads that make tunes and stage their files. Only summaries and hashes are sent back. */
export interface TuneThreads {
  /**
   * Yields the tunes in the order of the tasks. While the next one is not ready, this thread makes tunes
   * too, by `here`. Throws where a thread fails (`SiteError` where it could not write) and ends all threads.
   */
  readonly make: (
    tasks: readonly TuneTask[],
    place: SitePlace,
    here: MakeHere,
  ) => AsyncGenerator<StagedTune>;
  /** Ends the threads; `make` starts new ones. */
  readonly close: () => Promise<void>;
}

type MakeHere = (task: TuneTask) => Promise<StagedTune>;

/** The data that a thread starts with: the folder of the cache, and the hash of the program. */
export interface ThreadData {
  readonly cache: string;
  readonly program: string;
}

/** A message to a thread: tunes to make. The thread answers with a `StagedTune` for each task. */
export interface Batch {
  readonly tasks: readonly TuneTask[];
  readonly place: SitePlace;
}

/** Tunes in a batch. Each thread has two batches, so that it never waits for the next. */
const batchSize = 4;

/** Size of the next batch: smaller towards the end, so that all threads end at about the same time. */
const sizeOfNext = (left: number): number => Math.min(batchSize, Math.ceil(left / 16));

/** Path of the bundled worker; null where the code runs unbundled, as in the tests. */
const workerFile = import.meta.url.endsWith('.ts')
  ? null
  : join(packageRoot(), 'dist', 'tune-worker.js');

/** Starts a thread per processor but one, which this thread uses; null where there is no bundled worker. */
export function startThreads(workerData: ThreadData): TuneThreads | null {
  if (workerFile === null) return null;
  const file = workerFile;
  // A thread may fail before its first batch, or while all are being ended; an 'error' event without a
  // listener would end the process.
  let broken: unknown = null;
  const startOne = (): Worker =>
    new Worker(file, { workerData }).on('error', error => {
      broken ??= error;
    });
  const start = (): readonly Worker[] =>
    Array.from({ length: availableParallelism() - 1 }, startOne);
  let workers = start();
  const close = async (): Promise<void> => {
    await Promise.all(workers.map(worker => worker.terminate()));
    workers = [];
    broken = null;
  };
  return {
    async *make(tasks, place, here) {
      if (workers.length === 0) workers = start();
      let isDone = false;
      try {
        if (broken !== null) throw asSiteError(broken, place.folder);
        yield* handOut(workers, tasks, place, here);
        isDone = true;
      } finally {
        // After an error or an early stop the other threads may still be staging files: end them.
        if (!isDone) await close();
      }
    },
    close,
  };
}

/** Sends a batch to each worker that is free, and yields the tunes in the order of the tasks. */
async function* handOut(
  workers: readonly Worker[],
  tasks: readonly TuneTask[],
  place: SitePlace,
  here: MakeHere,
): AsyncGenerator<StagedTune> {
  const made: (StagedTune | undefined)[] = [];
  let [sent, failed, wake] = [0, null as unknown, (): void => {}];
  const leave = workers.map(worker => {
    const waiting: number[] = [];
    const send = (): void => {
      if (sent >= tasks.length) return;
      waiting.push(sent);
      const batch = tasks.slice(sent, sent + sizeOfNext(tasks.length - sent));
      worker.postMessage({ tasks: batch, place } satisfies Batch);
      sent += batch.length;
    };
    const take = (answer: readonly StagedTune[]): void => {
      const first = got(waiting.shift(), 'batch that a thread answers');
      for (const [i, tune] of answer.entries()) made[first + i] = tune;
      send();
      wake();
    };
    const fail = (error: Error): void => {
      failed = asSiteError(error, place.folder);
      wake();
    };
    worker.on('message', take).on('error', fail);
    send();
    send();
    return () => worker.off('message', take).off('error', fail);
  });
  try {
    for (let i = 0; i < tasks.length; i++) {
      while (made[i] === undefined && failed === null) {
        const task = tasks[sent];
        if (task) made[sent++] = await here(task);
        else {
          await new Promise<void>(resolve => {
            wake = resolve;
          });
        }
        await new Promise(setImmediate);
      }
      // Lets the event loop deliver messages of the workers, which would otherwise wait for new batches
      // while the caller uses the tunes that are ready.
      await new Promise(setImmediate);
      if (failed !== null) throw failed;
      const tune = at(made, i) as StagedTune;
      made[i] = undefined;
      yield tune;
    }
  } finally {
    for (const off of leave) off();
  }
}
