import { makeTune } from '../tunes/make-tune.ts';
import { realTunes } from '../tunes/real-tunes.ts';

const real = realTunes();

/** Tunes to measure with, in ABC: the real ones that `BOWBOOK_CORPUS` names, or as many made ones. */
export const benchTunes: readonly string[] =
  real.length > 0 ? real : Array.from({ length: 1000 }, (_, i) => makeTune(i).abc);

/** Which these are, to be printed with the figures. */
export const whichTunes = real.length > 0 ? 'real tunes' : 'made tunes';
