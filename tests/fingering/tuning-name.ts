import type { Tuning } from '../../shared/fingering/fingering.ts';
import { pitchName } from '../../shared/music/pitch.ts';

/** A tuning in letters, from the lowest string up, as `parseTuning` reads it: `AEAE`. */
export const tuningName = (tuning: Tuning): string =>
  tuning
    .map(p => pitchName(p).replace(/-?\d+$/, ''))
    .reverse()
    .join('');
