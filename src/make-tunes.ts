import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Cache } from './cache/open-cache.ts';
import { packageRoot } from './pages/package-root.ts';
import type { TuneJob } from './tune-jobs.ts';
import type { TuneNote, TuneProduct } from './tune-product.ts';

/** A job with the key that its product is kept under. */
export interface KeyedJob {
  readonly key: string;
  readonly job: TuneJob;
}

/** Makes tunes, here or in worker threads, and keeps them in the cache. */
export interface TuneMaker {
  /** The notes of tunes in the order of their jobs, each as soon as it and those before it are made. */
  readonly make: (jobs: readonly KeyedJob[]) => AsyncGenerator<TuneNote>;
  /** The product of a tune: just made, kept, or, where what was kept is damaged, made again. */
  readonly product: (job: KeyedJob) => Promise<TuneProduct>;
  readonly close: () => Promise<void>;
}

/**
 * A worker takes as long to start as some twenty tunes to make, so fewer than this many are made
 * here. A batch goes out in one message; each worker has two, so that it never waits for the next.
 */
const worthWorkers = 40;
const batchSize = 8;

/** Products that the pages are most likely to ask for next. */
const heldProducts = 16;

export function tuneMaker(cache: Cache): TuneMaker {
  let workers: readonly Worker[] = [];
  const held = new Map<string, TuneProduct>();
  const hold = (key: string, product: TuneProduct): TuneProduct => {
    held.set(key, product);
    const [oldest] = held.keys();
    if (held.size > heldProducts && oldest !== undefined) held.delete(oldest);
    return product;
  };
  const makeHere = async ({ key, job }: KeyedJob): Promise<TuneProduct> => {
    const { makeTune } = await import('./tune-product.ts');
    const product = hold(key, makeTune(job));
    cache.write(key, product);
    return product;
  };
  return {
    async *make(jobs) {
      if (jobs.length < worthWorkers || workerFile === null) {
        for (const job of jobs) yield (await makeHere(job)).note;
        return;
      }
      if (workers.length === 0) workers = startWorkers(workerFile, cache.folder);
      yield* inWorkers(workers, jobs);
    },
    async product(job) {
      const known = held.get(job.key) ?? (cache.read(job.key) as TuneProduct | undefined);
      const product = known ? hold(job.key, known) : await makeHere(job);
      // The prose round the tune is no part of the key, and may have changed.
      return { ...product, built: { ...product.built, block: job.job.block } };
    },
    close: async () => {
      await Promise.all(workers.map(worker => worker.terminate()));
    },
  };
}

/** The bundled worker; null where the code runs unbundled, as in the tests. */
const workerFile = import.meta.url.endsWith('.js')
  ? join(packageRoot(), 'dist', 'tune-worker.js')
  : null;

/**
 * A tune leaves much behind that is never looked at again. With room for several tunes' worth of it
 * the collector finds little alive, and takes a third of the time.
 */
const startWorkers = (file: string, cache: string): readonly Worker[] =>
  Array.from(
    { length: availableParallelism() },
    () =>
      new Worker(file, { workerData: { cache }, resourceLimits: { maxYoungGenerationSizeMb: 96 } }),
  );

/** Hands batches to whichever worker is free, and the notes back in the order of the jobs. */
async function* inWorkers(
  workers: readonly Worker[],
  jobs: readonly KeyedJob[],
): AsyncGenerator<TuneNote> {
  const notes: (TuneNote | undefined)[] = [];
  let [sent, failed, wake] = [0, null as Error | null, (): void => {}];
  const leave = workers.map(worker => {
    const waiting: number[] = [];
    const send = (): void => {
      if (sent >= jobs.length) return;
      waiting.push(sent);
      worker.postMessage(jobs.slice(sent, sent + batchSize));
      sent += batchSize;
    };
    const take = (made: readonly TuneNote[]): void => {
      const first = waiting.shift() ?? 0;
      for (const [i, note] of made.entries()) notes[first + i] = note;
      send();
      wake();
    };
    const fail = (error: Error): void => {
      failed = error;
      wake();
    };
    worker.on('message', take).on('error', fail);
    send();
    send();
    return () => worker.off('message', take).off('error', fail);
  });
  try {
    for (let i = 0; i < jobs.length; i++) {
      while (notes[i] === undefined && failed === null) {
        await new Promise<void>(resolve => {
          wake = resolve;
        });
      }
      // Messages come in only between turns of the event loop: what is done with a note would hold
      // them up for as long as there are notes.
      await new Promise(setImmediate);
      if (failed !== null) throw failed;
      const note = notes[i] as TuneNote;
      notes[i] = undefined;
      yield note;
    }
  } finally {
    for (const off of leave) off();
  }
}
