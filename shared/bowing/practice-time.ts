import { fraction, parseFraction, toNumber } from '../music/fraction.ts';
import type { Tempo, Tune } from '../music/tune.ts';
import type { BowingSettings } from './settings.ts';

/** The slow practice tempo of a tune's type; 80 crotchets a minute where it has none (common practice). */
export function practiceTempo(
  tune: Pick<Tune, 'type'>,
  settings: Pick<BowingSettings, 'tempi'>,
): Tempo {
  const tempo = tune.type ? settings.tempi[tune.type] : undefined;
  const beat = (tempo && parseFraction(tempo.beat)) ?? fraction(1, 4);
  return { beat, bpm: tempo?.slow ?? 80 };
}

/** Whole notes played in so many seconds at the slow practice tempo of the tune's type. */
export function notesInSeconds(
  tune: Pick<Tune, 'type'>,
  settings: Pick<BowingSettings, 'tempi'>,
  seconds: number,
): number {
  const { beat, bpm } = practiceTempo(tune, settings);
  return (toNumber(beat) * bpm * seconds) / 60;
}
