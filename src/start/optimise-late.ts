import { setFlagsFromString } from 'node:v8';

/**
 * Has V8 run more of a function before it looks whether to optimise it: 2,000,000 bytes of bytecode,
 * thirty times the usual. A build runs much code a few thousand times in each thread; as it is, threads
 * spend more time on making it quick than that wins back. It saves a third of a cold build's processor
 * time (`docs/performance.md`). Call it before the program is loaded: compiled code is taken over only
 * under the same flags.
 */
export const optimiseLate = (): void => setFlagsFromString('--interrupt-budget=2000000');
