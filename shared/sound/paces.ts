import type { BowingSettings } from '../bowing/settings.ts';
import { type Fraction, fraction, parseFraction, toNumber } from '../music/fraction.ts';
import { beatsOf } from '../music/meter.ts';
import type { Tune } from '../music/tune.ts';

export const paceNames = ['learning', 'slow', 'session'] as const;
export type PaceName = (typeof paceNames)[number];

/** The practice tempi of a tune, in beats a minute, and the beat they count, in whole notes. */
export interface Paces {
  readonly beat: Fraction;
  readonly perMinute: Readonly<Record<PaceName, number>>;
}

/** Least and greatest speed, in hundredths of a practice tempo; and of a recording's own speed. */
export const paceLimits = { least: 30, most: 120 } as const;
export const clipLimits = { least: 50, most: 120 } as const;

/**
 * The book's practice tempi for a tune's type. A tune of no known type is counted in its metre's own
 * beat at 50, 80 and 110 a minute, which is common practice and no more than a place to start.
 */
export function pacesOf(
  { type, meter }: Pick<Tune, 'type' | 'meter'>,
  { tempi }: Pick<BowingSettings, 'tempi'>,
): Paces {
  const own = type ? tempi[type] : undefined;
  const stated = own ? parseFraction(own.beat) : null;
  if (!own || !stated || toNumber(stated) <= 0) {
    const beat = meter.free ? fraction(1, 4) : beatsOf(meter, type);
    return { beat, perMinute: { learning: 50, slow: 80, session: 110 } };
  }
  const { learning, slow, session } = own;
  return { beat: stated, perMinute: { learning, slow, session } };
}

/** How a steady climb goes: so many beats a minute more, every so many times round, to a tempo. */
export interface Climb {
  readonly by: number;
  readonly every: number;
  readonly to: number;
}

/** Beats a minute of a time round, from 0. A climb never comes down to its goal. */
export function climbedTo(start: number, climb: Climb | null, round: number): number {
  if (climb === null || start >= climb.to) return start;
  return Math.min(climb.to, start + climb.by * Math.floor(round / climb.every));
}
