/** All that is bundled for Node: what the entries in `src/start/` ask of it. */
export { runCommand } from '../commands/cli.ts';

/** What a worker thread does; loaded only there, since it takes all that tunes are made with. */
export const serveBatches = async (): Promise<void> =>
  (await import('../workers/tune-worker.ts')).serveBatches();
