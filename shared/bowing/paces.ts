import { divide, type Fraction, fraction, parseFraction, toNumber } from '../music/fraction.ts';
import { beatsOf, isHalved, meterLength } from '../music/meter.ts';
import type { Tempo, Tune } from '../music/tune.ts';
import type { BowingSettings } from './settings.ts';

/** Practice tempi, slowest first. */
export const paceNames = ['learning', 'slow', 'session'] as const;
/** Name of a practice tempo. */
export type PaceName = (typeof paceNames)[number];

/** The practice tempi of a tune, in beats a minute, and the beat they count, in whole notes. */
export interface Paces {
  readonly beat: Fraction;
  readonly perMinute: Readonly<Record<PaceName, number>>;
}

type Paced = Pick<Tune, 'type' | 'meter' | 'unit' | 'tempo'>;
type Tempi = Pick<BowingSettings, 'tempi'>;

/** Tempi of a tune of no known type, in beats a minute (common practice). */
const anyPaces: Paces['perMinute'] = { learning: 50, slow: 80, session: 110 };

/**
 * Returns the tempi of a tune: those of its type in the book, or 50, 80 and 110 beats of its metre where it has
 * no type. `Q:` of the tune is its session tempo, in the beat of `Q:`; learning and slow then keep their ratios
 * to it, rounded to whole beats. Every part of the program takes tempi from here.
 */
export function pacesOf(tune: Paced, settings: Tempi): Paces {
  const usual = usualPaces(tune, settings);
  if (!tune.tempo) return usual;
  const { beat, bpm } = tune.tempo;
  const { learning, slow, session } = usual.perMinute;
  const asUsual = (pace: number): number => Math.max(1, Math.round((bpm * pace) / session));
  return { beat, perMinute: { learning: asUsual(learning), slow: asUsual(slow), session: bpm } };
}

/**
 * The tempi without `Q:`. The beat of the type in the book is used where it fits the metre, else that of the
 * metre: a march in 6/8 is counted in dotted crotchets, at as many a minute as one in 4/4 in crotchets (common
 * practice). A halved metre (`isHalved`) is counted in crotchets, at as many notes a second as the tune in 4/4.
 */
function usualPaces({ type, meter, unit }: Paced, { tempi }: Tempi): Paces {
  const own = type ? tempi[type] : undefined;
  const { learning, slow, session } = own ?? anyPaces;
  const felt = beatsOf(meter, { type, meter, unit });
  const halved = isHalved({ type, meter, unit });
  const stated = own ? parseFraction(own.beat) : null;
  const full = meterLength(meter);
  const lasts = stated && halved ? divide(stated, fraction(2)) : stated;
  const fits =
    lasts &&
    (!full ||
      (isWhole(divide(full, lasts)) &&
        (isWhole(divide(lasts, felt)) || isWhole(divide(felt, lasts)))));
  const beat = lasts && fits ? lasts : felt;
  const counted = halved ? fraction(1, 4) : beat;
  const each = toNumber(divide(beat, counted));
  return {
    beat: counted,
    perMinute: { learning: learning * each, slow: slow * each, session: session * each },
  };
}

const isWhole = ({ d }: Fraction): boolean => d === 1;

/** Returns the slow practice tempo, which exported files state and on which limits of strokes depend. */
export function slowTempo(tune: Paced, settings: Tempi): Tempo {
  const { beat, perMinute } = pacesOf(tune, settings);
  return { beat, bpm: perMinute.slow };
}

/** Converts seconds to whole notes at a tempo. */
export const notesInSeconds = ({ beat, bpm }: Tempo, seconds: number): number =>
  (toNumber(beat) * bpm * seconds) / 60;

/** Converts whole notes to seconds at a tempo. */
export const secondsOfNotes = ({ beat, bpm }: Tempo, length: number): number =>
  (length / toNumber(beat)) * (60 / bpm);
