import { describe, expect, it } from 'vitest';
import { fingerOf } from '../../shared/fingering/finger-of.ts';
import { fiddleTuning, parseTuning, retuned } from '../../shared/fingering/tunings.ts';
import { diatonic, type Pitch, parsePitch, pitch, pitchName } from '../../shared/music/pitch.ts';
import { tuningName } from './tuning-name.ts';

const at = (name: string): Pitch => {
  const p = parsePitch(name);
  if (!p) throw new Error(name);
  return p;
};

/** The pitch of that letter that lies on a string. */
const onString = (name: string, open: Pitch): Pitch => {
  const p = at(`${name}${open.octave}`);
  return diatonic(p) < diatonic(open) ? at(`${name}${open.octave + 1}`) : p;
};

describe('the finger of a pitch', () => {
  // Leopold Mozart, Violinschule 1756, pp. 66-68, first position. 0 is open.
  const chart: readonly (readonly [string, string])[] = [
    ['G3', 'G0 Ab1 A1 Bb2 B2 C3 Db4'],
    ['G3', 'G#1 A1 A#1 B2 B#2 C#3 D4 D#4'],
    ['D4', 'D0 Eb1 E1 F2 Gb3 G3 Ab4'],
    ['D4', 'E1 E#1 F#2 G3 G#3 A4 A#4'],
    ['A4', 'A0 Bb1 B1 C2 Db3 D3 Eb4'],
    ['A4', 'B1 B#1 C#2 D3 D#3 E4 E#4'],
    ['E5', 'E0 F1 Gb2 G2 Ab3 A3 Bb4'],
    ['E5', 'F#1 G2 G#2 A3 A#3 B4'],
  ];
  it.each(chart)('on %s: %s', (string, row) => {
    const open = at(string);
    const found = row.split(' ').map(cell => {
      const name = cell.replace(/\d$/, '');
      return `${name}${fingerOf(onString(name, open), open)}`;
    });
    expect(found.join(' ')).toBe(row);
  });

  it('is what players use, by semitones', () => {
    // Common practice, no published source: at 4 and at 6 either finger is in use.
    const used = [[0], [1], [1], [2], [2, 3], [3], [3, 4], [4]];
    // Spelled as keys of up to three accidentals spell them.
    const spelled = 'C C# D Eb E F F# G Ab G# A Bb B'.split(' ');
    for (const open of fiddleTuning) {
      for (const name of spelled) {
        const p = onString(name, open);
        const fingers = used[p.midi - open.midi];
        if (fingers) expect(fingers, pitchName(p)).toContain(fingerOf(p, open));
      }
    }
  });

  it('ends with the stretched fourth', () => {
    expect(fingerOf(at('C6'), at('E5'))).toBe(4);
    expect(fingerOf(at('C#6'), at('E5'))).toBeNull();
    expect(fingerOf(at('D#5'), at('E5'))).toBeNull();
  });
});

describe('tunings', () => {
  it('is a fiddle: MIDI 55 62 69 76, and B5 the highest unstretched', () => {
    expect(fiddleTuning.map(p => p.midi)).toEqual([76, 69, 62, 55]);
    expect(fingerOf(at('B5'), fiddleTuning[0])).toBe(4);
    expect(at('B5').midi).toBe(83);
  });

  it('sounds at the published frequencies', () => {
    // ISO 16: A4 = 440 Hz, equal temperament.
    const hertz = [...fiddleTuning.map(p => p.midi), 83].map(m => 440 * 2 ** ((m - 69) / 12));
    expect(hertz.map(h => h.toFixed(3))).toEqual([
      '659.255',
      '440.000',
      '293.665',
      '195.998',
      '987.767',
    ]);
  });

  it.each([
    ['GDAE', 'E5 A4 D4 G3'],
    ['AEAE', 'E5 A4 E4 A3'],
    ['ADAE', 'E5 A4 D4 A3'],
    ['AEAC#', 'C#5 A4 E4 A3'],
    ['g d a d', 'D5 A4 D4 G3'],
    ['FCGD', 'D5 G4 C4 F3'],
    ['FCGC', 'C5 G4 C4 F3'],
  ])('reads %s', (text, strings) => {
    expect(parseTuning(text)?.map(pitchName).join(' ') ?? null).toBe(strings);
  });

  it('reads strings given outright, and says them again', () => {
    expect(parseTuning(['E5', 'A4', 'D4', 'G3'])).toEqual(fiddleTuning);
    expect(tuningName(parseTuning('AEAC#') ?? fiddleTuning)).toBe('AEAC#');
    expect(tuningName(fiddleTuning)).toBe('GDAE');
  });

  it.each([
    ['GDA'],
    ['GDAEB'],
    ['GDAH'],
    ['GDAHE'],
    [''],
    [['E5', 'A4', 'D4']],
    [['E5', 'A4', 'D4', 'G3', 'C3']],
    [['H5', 'A4', 'D4', 'G3']],
    [['E5', 'H4', 'D4', 'G3']],
    [['E5', 'A4', 'H4', 'G3']],
    [['E5', 'A4', 'D4', 'H3']],
  ])('refuses %s', text => expect(parseTuning(text)).toBeNull());

  // A string as high as its neighbour, or higher, is strung wrongly: fingers would lie backwards.
  it.each([
    [['A4', 'E5', 'D4', 'G3']],
    [['E5', 'D4', 'A4', 'G3']],
    [['E5', 'A4', 'G3', 'D4']],
    [['A4', 'A4', 'D4', 'G3']],
    [['E5', 'D4', 'D4', 'G3']],
    [['E5', 'A4', 'G3', 'G3']],
    [['G3', 'D4', 'A4', 'E5']],
  ])('refuses %s, which does not fall from string to string', strings =>
    expect(parseTuning(strings)).toBeNull(),
  );

  it('takes the nearest pitch of a letter, and the lower of two as near: a string is let down sooner', () => {
    expect(parseTuning('GBAE')?.map(pitchName).join(' ')).toBe('E5 A4 B3 G3');
    expect(parseTuning('GDCE')?.map(pitchName).join(' ')).toBe('E5 C5 D4 G3');
    expect(parseTuning('GDABb')?.map(pitchName).join(' ')).toBe('Bb4 A4 D4 G3');
    expect(parseTuning('G-D A-E')).toEqual(fiddleTuning);
  });

  it('knows which strings are retuned', () => {
    expect(retuned(fiddleTuning)).toEqual([]);
    expect(retuned(parseTuning('AEAE') ?? fiddleTuning)).toEqual([3, 4]);
    expect(retuned(parseTuning('GDAD') ?? fiddleTuning)).toEqual([1]);
  });

  it('keeps a cross-tuned string within a tritone of the usual', () => {
    expect(parseTuning('AEAE')?.[3]).toEqual(pitch('A', 0, 3));
  });
});
