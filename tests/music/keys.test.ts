import { describe, expect, it } from 'vitest';
import { fifthsOf, noKey, signatureOf } from '../../shared/music/key-names.ts';
import { diatonic, letters, parsePitch, pitch, pitchName } from '../../shared/music/pitch.ts';
import type { Key } from '../../shared/music/tune.ts';

describe('key signatures', () => {
  // The circle of fifths, as any primer of music has it.
  it.each<[string, number]>([
    ['Cb', -7],
    ['Gb', -6],
    ['Bb', -2],
    ['F', -1],
    ['C', 0],
    ['G', 1],
    ['D', 2],
    ['A', 3],
    ['E', 4],
    ['B', 5],
    ['F#', 6],
    ['C#', 7],
  ])('%s major has %i sharps', (tonic, fifths) => expect(fifthsOf(tonic, 'major')).toBe(fifths));

  it('are those of ABC 2.1, section 3.1.14: seven modes with the same notes', () => {
    const rows: readonly (readonly [string, string])[] = [
      ['C major', 'C lydian F mixolydian G minor A dorian D phrygian E locrian B'],
      ['G major', 'C lydian C mixolydian D minor E dorian A phrygian B locrian F#'],
      ['F major', 'C lydian Bb mixolydian C minor D dorian G phrygian A locrian E'],
    ];
    for (const [major, others] of rows) {
      const [tonic = ''] = major.split(' ');
      const [, ...pairs] = others.split(' ');
      for (let i = 0; i < pairs.length; i += 2) {
        const [mode, on] = [pairs[i] as Key['mode'], pairs[i + 1] ?? ''];
        expect(fifthsOf(on, mode), `${on} ${mode}`).toBe(fifthsOf(tonic, 'major'));
      }
    }
  });

  it('alter letters in the order F C G D A E B, and flats the other way round', () => {
    const altered = (fifths: number): string =>
      letters
        .flatMap(l => (signatureOf(fifths)[l] === 0 ? [] : [`${l}${signatureOf(fifths)[l]}`]))
        .join(' ');
    expect(altered(0)).toBe('');
    expect(altered(2)).toBe('C1 F1');
    expect(altered(3)).toBe('C1 F1 G1');
    expect(altered(-1)).toBe('B-1');
    expect(altered(-3)).toBe('E-1 A-1 B-1');
    // G sharp major, with F double sharp.
    expect(altered(8)).toBe('C1 D1 E1 F2 G1 A1 B1');
  });

  it('are none where no key is stated; a tonic that is no letter is a defect of ours', () => {
    expect([noKey.fifths, fifthsOf('E', 'none')]).toEqual([0, 0]);
    expect(() => fifthsOf('H', 'major')).toThrow(RangeError);
  });
});

describe('pitches', () => {
  // Scientific pitch notation: middle C is C4, MIDI 60; A4 is 69.
  it.each<[string, number, number]>([
    ['C4', 60, 28],
    ['A4', 69, 33],
    ['B3', 59, 27],
    ['Cb4', 59, 28],
    ['B#3', 60, 27],
    ['F##5', 79, 38],
    ['Ebb4', 62, 30],
    ['C-1', 0, -7],
  ])('%s is MIDI %i, %i staff steps up', (name, midi, steps) => {
    const p = parsePitch(name);
    if (!p) throw new Error(name);
    expect([p.midi, diatonic(p), pitchName(p)]).toEqual([midi, steps, name]);
  });
  it.each(['', 'H4', 'C', 'C44', 'C###4', '4', 'xC4'])('%j is none', name =>
    expect(parsePitch(name)).toBeNull(),
  );
  it('are read in small letters too, and named by two signs at most', () => {
    expect(parsePitch('bb3')).toEqual(pitch('B', -1, 3));
    expect(() => pitchName(pitch('C', 3, 4))).toThrow(RangeError);
  });
});
