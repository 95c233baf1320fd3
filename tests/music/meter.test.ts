import { describe, expect, it } from 'vitest';
import { type Fraction, fraction, fractionText } from '../../shared/music/fraction.ts';
import { beatsOf, freeMeter, meterLength, strongBeats } from '../../shared/music/meter.ts';
import type { Meter, TuneType } from '../../shared/music/tune.ts';

const meter = (beats: number, unit: number, sign: Meter['sign'] = null): Meter => ({
  beats,
  unit,
  sign,
  free: false,
});

/** Beats as the trade counts them (common practice). */
describe('beats', () => {
  const eighth = fraction(1, 8);
  const sixteenth = fraction(1, 16);
  it.each<[string, Meter, TuneType | null, string, string, Fraction?]>([
    ['jig', meter(6, 8), 'jig', '3/8', '0 3/8'],
    ['slip jig', meter(9, 8), 'slip jig', '3/8', '0 3/8 3/4'],
    ['slide', meter(12, 8), 'slide', '3/8', '0 3/8 3/4 9/8'],
    ['reel', meter(4, 4), 'reel', '1/2', '0 1/2'],
    ['cut time', meter(2, 2, 'cut'), null, '1/2', '0 1/2'],
    ['hornpipe', meter(4, 4), 'hornpipe', '1/2', '0 1/2'],
    ['strathspey', meter(4, 4), 'strathspey', '1/4', '0 1/2'],
    ['polka', meter(2, 4), 'polka', '1/4', '0 1/4'],
    ['waltz', meter(3, 4), 'waltz', '1/4', '0'],
    ['a quick 3/8', meter(3, 8), null, '1/8', '0'],
    ['reel in 2/4', meter(2, 4), 'reel', '1/4', '0 1/4', sixteenth],
    ['reel in 2/4, semiquavers written A/', meter(2, 4), 'reel', '1/4', '0 1/4'],
    ['hornpipe in 2/4', meter(2, 4), 'hornpipe', '1/4', '0 1/4', sixteenth],
    ['polka in semiquavers', meter(2, 4), 'polka', '1/4', '0 1/4', sixteenth],
    ['no type, 2/4 in quavers', meter(2, 4), null, '1/4', '0'],
    ['no type, 2/4 in semiquavers', meter(2, 4), null, '1/8', '0 1/4', sixteenth],
  ])('%s', (_, m, type, beat, strong, unit = eighth) => {
    const tune = { type, meter: m, unit };
    expect(fractionText(beatsOf(m, tune))).toBe(beat);
    expect(strongBeats(m, tune).map(fractionText).join(' ')).toBe(strong);
  });
});

it('a free metre has no length', () => {
  expect(meterLength(freeMeter)).toBeNull();
  expect(meterLength(meter(6, 8))).toEqual({ n: 3, d: 4 });
});
