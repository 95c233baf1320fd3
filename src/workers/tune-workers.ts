import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { asTrouble } from '../output/site-trouble.ts';
import type { SitePlace } from '../output/stage-file.ts';
import { packageRoot } from '../pages/package-root.ts';
import type { TuneTask } from '../pipeline/tune-jobs.ts';
import type { BookSettings } from '../read/book.ts';
import type { BookIndex } from '../read/book-index.ts';
import type { PageText } from '../read/page-reader.ts';
import type { ReadingThread } from '../read/read-ahead.ts';
import type { KeptPage } from '../read/read-memo.ts';
import type { PageNames } from '../read/read-page.ts';
import type { PlacedTune } from './tune-maker.ts';

/** Threads that read pages, and make tunes and stage their files, of which only notes and hashes come back. */
export interface TuneWorkers {
  /** Each of them as a reader of pages, until it makes tunes. */
  readonly readers: () => readonly ReadingThread[];
  /** Rather than wait for the next tune, this thread makes one too, by `here`. */
  readonly make: (
    tasks: readonly TuneTask[],
    place: SitePlace,
    here: MakeHere,
  ) => AsyncGenerator<PlacedTune>;
  readonly close: () => Promise<void>;
}

type MakeHere = (task: TuneTask) => Promise<PlacedTune>;

/** What goes out to a worker in one message. */
export type Request = Batch | ReadRequest;

/** Tunes to be made: the answer is a `PlacedTune` for each task. */
interface Batch {
  readonly tasks: readonly TuneTask[];
  readonly place: SitePlace;
}

/** Pages to be read: the answer is their names, or with an index the pages themselves. */
export interface ReadRequest {
  readonly pages: readonly PageText[];
  readonly under: { readonly index: BookIndex; readonly settings: BookSettings } | null;
}

/** Each worker has two batches, so that it never waits for the next. */
const batchSize = 4;

/** Towards the end batches get smaller, so that all are done at about the same time. */
const sizeOfNext = (left: number): number => Math.min(batchSize, Math.ceil(left / 16));

/** The bundled worker; null where the code runs unbundled, as in the tests. */
const workerFile = import.meta.url.endsWith('.ts')
  ? null
  : join(packageRoot(), 'dist', 'tune-worker.js');

/** One for each processor but this thread's; null where there is no bundled worker. `cache`: its folder. */
export function startWorkers(cache: string): TuneWorkers | null {
  if (workerFile === null) return null;
  const file = workerFile;
  // A thread may fail before it is given work, or while all are being ended: an error that nobody
  // listened for would end the process.
  let broken: unknown = null;
  const startOne = (): Worker => {
    const worker = new Worker(file, { workerData: { cache } });
    return worker.on('error', error => {
      broken ??= error;
    });
  };
  const start = (): readonly Worker[] =>
    Array.from({ length: availableParallelism() - 1 }, startOne);
  let workers = start();
  const close = async (): Promise<void> => {
    await Promise.all(workers.map(worker => worker.terminate()));
    workers = [];
    broken = null;
  };
  const ask = async <T>(worker: Worker, request: ReadRequest): Promise<readonly T[]> => {
    if (broken !== null) throw broken;
    worker.postMessage(request);
    const [answer] = await once(worker, 'message');
    return answer;
  };
  return {
    readers: () =>
      workers.map(worker => ({
        names: pages => ask<PageNames>(worker, { pages, under: null }),
        finish: (pages, index, settings) =>
          ask<KeptPage>(worker, { pages, under: { index, settings } }),
      })),
    async *make(tasks, place, here) {
      if (workers.length === 0) workers = start();
      let isDone = false;
      try {
        if (broken !== null) throw asTrouble(broken, place.folder);
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
): AsyncGenerator<PlacedTune> {
  const made: (PlacedTune | undefined)[] = [];
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
    const take = (answer: readonly PlacedTune[]): void => {
      const first = waiting.shift() ?? 0;
      for (const [i, tune] of answer.entries()) made[first + i] = tune;
      send();
      wake();
    };
    const fail = (error: Error): void => {
      failed = asTrouble(error, place.folder);
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
      const tune = made[i] as PlacedTune;
      made[i] = undefined;
      yield tune;
    }
  } finally {
    for (const off of leave) off();
  }
}
