import fc from 'fast-check';

/**
 * The one seed of all random tests: the same in every run, unless `BOWBOOK_SEED` says another.
 * `npm run test:random` draws a new one and prints it, so that a failure can be tried again.
 */
export const seed = Number(process.env.BOWBOOK_SEED ?? 20260922);

fc.configureGlobal({ seed });
