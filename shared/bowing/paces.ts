import { divide, type Fraction, fraction, parseFraction, toNumber } from '../music/fraction.ts';
import { beatsOf, isHalved, meterLength } from '../music/meter.ts';
import type { Tempo, Tune } from '../music/tune.ts';
import type { BowingSettings } from './settings.ts';

export const paceNames = ['learning', 'slow', 'session'] as const;
export type PaceName = (typeof paceNames)[number];

/** The practice tempi of a tune, in beats a minute, and the beat they count, in whole notes. */
export interface Paces {
  readonly beat: Fraction;
  readonly perMinute: Readonly<Record<PaceName, number>>;
}

type Paced = Pick<Tune, 'type' | 'meter' | 'unit' | 'tempo'>;
type Tempi = Pick<BowingSettings, 'tempi'>;

/** A tune of no known type: common practice, and no more than a place to start. */
const anyPaces: Paces['perMinute'] = { learning: 50, slow: 80, session: 110 };

/**
 * The tempi of a tune: page, sound, files, sets, recordings and limits of strokes all ask here. They
 * are those of the tune's type in the book, or 50, 80 and 110 of the metre's beats where it has none.
 * `Q:` of the tune is its session pace, in its own beat; learning and slow then keep their ratios to it,
 * in whole beats.
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
 * The paces without `Q:`. The beat that the book states for a type counts where it fits the metre,
 * else the metre's own does: a march in 6/8 goes by the dotted crotchet, at as many a minute as one in
 * 4/4 by the crotchet (common practice). A halved metre (`isHalved`) goes by the crotchet, and plays as
 * many notes a second as the tune in 4/4.
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

/** The slow practice tempo: the one that files state, and that limits of strokes go by. */
export function slowTempo(tune: Paced, settings: Tempi): Tempo {
  const { beat, perMinute } = pacesOf(tune, settings);
  return { beat, bpm: perMinute.slow };
}

/** Whole notes played in so many seconds at a tempo. */
export const notesInSeconds = ({ beat, bpm }: Tempo, seconds: number): number =>
  (toNumber(beat) * bpm * seconds) / 60;

/** Seconds that so many whole notes take at a tempo. */
export const secondsOfNotes = ({ beat, bpm }: Tempo, length: number): number =>
  (length / toNumber(beat)) * (60 / bpm);
