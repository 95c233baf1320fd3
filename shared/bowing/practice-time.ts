import { fraction, parseFraction, toNumber } from '../music/fraction.ts';
import type { Tune } from '../music/tune.ts';
import type { BowingSettings } from './settings.ts';

/** Whole notes played in so many seconds at the slow practice tempo of the tune's type. */
export function notesInSeconds(
  tune: Pick<Tune, 'type'>,
  settings: Pick<BowingSettings, 'tempi'>,
  seconds: number,
): number {
  const tempo = tune.type ? settings.tempi[tune.type] : undefined;
  const beat = (tempo && parseFraction(tempo.beat)) ?? fraction(1, 4);
  return (toNumber(beat) * (tempo?.slow ?? 80) * seconds) / 60;
}
