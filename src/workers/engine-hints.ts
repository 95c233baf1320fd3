import { setFlagsFromString } from 'node:v8';

/**
 * How much of a function is run before V8 looks whether to optimise it, in bytes of bytecode: thirty
 * times the usual. A build runs much code a few thousand times in each thread, and as it was, threads
 * spent more time on making it quick than that won back.
 */
const patience = '--interrupt-budget=2000000';

/**
 * New objects are collected by the thread that made them, not by helpers too: with each processor busy,
 * these take longer to hand out the little that is in use than to copy it. One thread alone is helped.
 */
const alone = '--no-parallel-scavenge';

/**
 * How much the heap may grow over what is in use before all of it is searched for garbage, in per
 * cent. As it is, that is four times as much, which a thousand tunes never notice; ten thousand,
 * of which more is in use at once, would take twice the memory for a tenth less time.
 */
const thrift = '--heap-growing-percent=60';

/** From this many tunes on, memory counts for more than time. */
const manyTunes = 3000;

/**
 * Tells the engine what is run here: a build. Before the program is loaded, since compiled code is taken
 * over only under the same flags. Hints: another engine may not know them.
 */
export const hintBuild = (): void => setFlagsFromString(patience);

/** Tells the engine that threads share in the build. */
export const hintThreads = (): void => setFlagsFromString(alone);

/** Tells the engine how many tunes are to be made; once threads have loaded the program, as `hintBuild` says. */
export function hintTunes(tunes: number): void {
  if (tunes >= manyTunes) setFlagsFromString(thrift);
}
