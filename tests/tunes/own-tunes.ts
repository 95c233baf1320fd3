import { makeTune, type TestTune } from './make-tune.ts';

/** The project's own tunes to test with, made by rule: every type with every trait, the same each time. */
export const ownTunes: readonly TestTune[] = Array.from({ length: 80 }, (_, i) => makeTune(i));
