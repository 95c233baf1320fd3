import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { asSiteError } from '../output/site-error.ts';
import type { SitePlace } from '../output/stage-file.ts';
import { packageRoot } from '../pages/package-root.ts';
import type { StagedTune } from '../pipeline/made-tune.ts';
import type { TuneTask } from '../pipeline/tune-task.ts';

/** Threads that make tunes and stage their files, of which only summaries and hashes come back. */
export interface TuneThreads {
  /**
   * What is made of the tasks, in their order. Rather than wait for the next tune, this thread makes one
   * too, by `here`. Throws `SiteError` where a thread could not write; then all of them are ended.
   */
  readonly make: (
    tasks: readonly TuneTask[],
    place: SitePlace,
    here: MakeHere,
  ) => AsyncGenerator<StagedTune>;
  readonly close: () => Promise<void>;
}

type MakeHere = (task: TuneTask) => Promise<StagedTune>;

/** What a thread is told as it starts: the folder of the cache, and the hash of the program. */
export interface ThreadData {
  readonly cache: string;
  readonly program: string;
}

/** Tunes to be made, in one message to a thread: its answer is a `StagedTune` for each task. */
export interface Batch {
  readonly tasks: readonly TuneTask[];
  readonly place: SitePlace;
}

/** Each thread has two batches, so that it never waits for the next. */
const batchSize = 4;

/** Towards the end batches get smaller, so that all are done at about the same time. */
const sizeOfNext = (left: number): number => Math.min(batchSize, Math.ceil(left / 16));

/** The bundled worker; null where the code runs unbundled, as in the tests. */
const workerFile = import.meta.url.endsWith('.ts')
  ? null
  : join(packageRoot(), 'dist', 'tune-worker.js');

/** Starts a thread for each processor but this thread's; null where there is no bundled worker. */
export function startThreads(workerData: ThreadData): TuneThreads | null {
  if (workerFile === null) return null;
  const file = workerFile;
  // A thread may fail before it is given work, or while all are being ended: an error that nobody
  // listened for would end the process.
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
        // One may have failed, and others may still be staging files that nobody will ask for.
        if (!isDone) await close();
      }
    },
    close,
  };
}

/** Hands batches to whichever worker is free, and what is made back in the order of the tasks. */
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
      const first = waiting.shift() ?? 0;
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
      // Messages come in only between turns of the event loop: what is done with a tune would hold
      // them up for as long as there are tunes.
      await new Promise(setImmediate);
      if (failed !== null) throw failed;
      const tune = made[i] as StagedTune;
      made[i] = undefined;
      yield tune;
    }
  } finally {
    for (const off of leave) off();
  }
}
