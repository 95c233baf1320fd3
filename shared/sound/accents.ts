import { toNumber } from '../music/fraction.ts';
import { beatsOf, type Counted, strongBeats } from '../music/meter.ts';
import type { Meter, TuneType } from '../music/tune.ts';

/** Decibels on strong beats, and half-way between beats. */
interface Accents {
  readonly strong: number;
  readonly off: number;
}

/** Where each type leans (common practice): a polka off the beat, the others on it. */
const accents: Readonly<Record<TuneType, Accents>> = {
  reel: { strong: 1.5, off: 0 },
  jig: { strong: 2, off: 0 },
  'slip jig': { strong: 2, off: 0 },
  hornpipe: { strong: 2, off: 0 },
  polka: { strong: 0, off: 2 },
  slide: { strong: 2, off: 0 },
  waltz: { strong: 2.2, off: 0 },
  strathspey: { strong: 2.2, off: 0 },
  march: { strong: 2, off: 0 },
  air: { strong: 0.5, off: 0 },
};

/** How much louder, in decibels, a note is that begins at `place` (whole notes into a full bar). */
export function accentAt(tune: Counted, meter: Meter, place: number): number {
  const { type } = tune;
  const own: Accents = type ? accents[type] : { strong: 1, off: 0 };
  const isAt = (x: number): boolean => Math.abs(x - place) < 1e-9;
  const beat = toNumber(beatsOf(meter, tune));
  const isOff = Math.abs(place / beat - Math.floor(place / beat + 1e-9) - 1 / 2) < 1e-9;
  if (isOff) return own.off;
  return strongBeats(meter, tune).some(b => isAt(toNumber(b))) ? own.strong : 0;
}
