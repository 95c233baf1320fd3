import { Midi } from 'tonal';
import { describe, expect, it } from 'vitest';
import { renderSound } from '../../shared/sound/render-sound.ts';
import type { SoundingPassage, SoundingStroke, Tone } from '../../shared/sound/sounding.ts';
import { brightnessOf, cents, dipAt, levelAt, pitchOf, rate } from './listen.ts';
import { renderWhole } from './render-whole.ts';

const [g3, b5] = [55, 83];
const pitches = Array.from({ length: b5 - g3 + 1 }, (_, i) => g3 + i);

const tone = (at: number, ...pitches: number[]): Tone => ({
  at,
  pitches,
  accent: 0,
  stopped: false,
});
const stroke = (
  direction: 'down' | 'up',
  from: number,
  until: number,
  tones: readonly Tone[],
  runsOn = true,
): SoundingStroke => ({ direction, from, until, tones, runsOn });
const sounding = (length: number, ...strokes: SoundingStroke[]): SoundingPassage => ({
  length,
  strokes,
  ticks: [],
  notes: [],
});
const oneNote = (pitch: number, direction: 'down' | 'up' = 'down'): Float32Array =>
  renderWhole(sounding(1, stroke(direction, 0, 1, [tone(0, pitch)])), rate);
const steadyPart = (samples: Float32Array): Float32Array =>
  samples.subarray(Math.round(0.3 * rate), Math.round(0.7 * rate));

describe('the bowed string', () => {
  it('is in tune: within 3 cents of equal temperament on A4 = 440 Hz (ISO 16), G3 to B5', {
    tags: ['slow'],
  }, () => {
    expect(Midi.midiToFreq(69)).toBe(440);
    for (const pitch of pitches) {
      const heard = pitchOf(steadyPart(oneNote(pitch)));
      expect(Math.abs(cents(heard, Midi.midiToFreq(pitch))), `MIDI ${pitch}`).toBeLessThan(3);
    }
  });

  it('falls by 10 dB at least where the bow turns, between any two neighbouring pitches', () => {
    for (const pitch of pitches.slice(0, -2)) {
      for (const [first, second] of [
        ['down', 'up'],
        ['up', 'down'],
      ] as const) {
        for (const next of [pitch, pitch + 2]) {
          const samples = renderWhole(
            sounding(
              1,
              stroke(first, 0, 0.5, [tone(0, pitch)]),
              stroke(second, 0.5, 1, [tone(0.5, next)], false),
            ),
            rate,
          );
          const dip = dipAt(samples, 0.5, Midi.midiToFreq(pitch));
          expect(dip, `${pitch} to ${next}, ${first}`).toBeGreaterThan(10);
        }
      }
    }
  });

  it('falls by less than 3 dB within a slur, by step, leap and over a string', () => {
    for (const pitch of pitches) {
      for (const by of [-7, -4, -2, -1, 1, 2, 4, 7]) {
        if (pitch + by < g3 || pitch + by > b5) continue;
        const samples = renderWhole(
          sounding(1, stroke('down', 0, 1, [tone(0, pitch), tone(0.5, pitch + by)], false)),
          rate,
        );
        const dip = dipAt(samples, 0.5, Midi.midiToFreq(pitch + Math.min(0, by)));
        expect(dip, `${pitch} slurred by ${by}`).toBeLessThan(3);
      }
    }
  });

  it('speaks again in a hook: the bow stops, and goes on the same way', () => {
    const hooked = [tone(0, 69), { ...tone(0.5, 71), stopped: true }];
    const samples = renderWhole(sounding(1, stroke('up', 0, 1, hooked, false)), rate);
    expect(dipAt(samples, 0.5, 440)).toBeGreaterThan(10);
  });

  it('tells down-bows from up-bows by tone: a down-bow is brighter by a tenth at least', () => {
    for (const pitch of [55, 62, 69, 76, 83]) {
      const hertz = Midi.midiToFreq(pitch);
      const heard = (way: 'down' | 'up'): number =>
        brightnessOf(steadyPart(oneNote(pitch, way)), hertz);
      expect(heard('down') / heard('up'), `MIDI ${pitch}`).toBeGreaterThan(1.1);
    }
  });

  it('is about as loud on every pitch, single or double, and never past full scale', () => {
    const levels = pitches.map(p => levelAt(steadyPart(oneNote(p)), 0, 8000));
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(6);
    for (const pitch of pitches) {
      for (const pair of [[pitch], [pitch, pitch + 7], [pitch, pitch + 9]]) {
        const samples = renderWhole(
          sounding(1, stroke('down', 0, 1, [{ ...tone(0, ...pair), accent: 2.2 }])),
          rate,
        );
        const peak = samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
        expect(peak, pair.join('+')).toBeLessThan(0.95);
        expect(peak, pair.join('+')).toBeGreaterThan(0.2);
      }
    }
  });

  it('sounds both notes of a double stop', () => {
    const both = renderWhole(sounding(1, stroke('down', 0, 1, [tone(0, 62, 69)])), rate);
    const share = (hertz: number): number => {
      let [re, im] = [0, 0];
      steadyPart(both).forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * hertz * i) / rate);
        im += x * Math.sin((2 * Math.PI * hertz * i) / rate);
      });
      return Math.hypot(re, im);
    };
    const [low, high, between] = [share(Midi.midiToFreq(62)), share(440), share(360)];
    expect(low).toBeGreaterThan(10 * between);
    expect(high).toBeGreaterThan(10 * between);
  });

  it('is the same samples however it is cut into pieces', () => {
    const passage = sounding(
      1,
      stroke('down', 0, 0.31, [tone(0, 62), tone(0.17, 64)]),
      stroke('up', 0.31, 0.8, [tone(0.31, 66)], false),
    );
    const ticked = { ...passage, ticks: [{ at: 0.3, strong: true }] };
    const whole = renderWhole(ticked, rate);
    const pieces = new Float32Array(whole.length);
    const rendering = renderSound(ticked, rate, pieces);
    for (let at = 0; at < whole.length; ) at = rendering.advance(at + 777);
    expect(pieces).toEqual(whole);
  });
});
