/** Keys and modes of ABC 2.1, section 3.1.14, against `tonal`. */
import { Key, Mode, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { fifthsOf } from '../../shared/music/key-names.ts';
import { letters, parsePitch, pitchName } from '../../shared/music/pitch.ts';
import { keyOf } from './key-of.ts';
import { names, readTune } from './read-abc.ts';

const key = (written: string) => readTune(`X:1\nT:T\nK:${written}\nA`).tune.key;

describe('keys as written', () => {
  it.each(['D', 'Bm', 'AMix', 'EDor', 'F#Phr', 'GLyd', 'C#Loc'])('K:%s has two sharps', written => {
    const { fifths, alters } = key(written);
    expect(fifths).toBe(2);
    expect(alters).toEqual({ C: 1, D: 0, E: 0, F: 1, G: 0, A: 0, B: 0 });
  });
  it.each([
    ['Amin', 'A', 'minor'],
    ['Am', 'A', 'minor'],
    ['A minor', 'A', 'minor'],
    ['Amixolydian', 'A', 'mixolydian'],
    ['A dorian', 'A', 'dorian'],
    ['Bbmaj', 'Bb', 'major'],
    ['F#m', 'F#', 'minor'],
  ])('K:%s is %s %s', (written, tonic, mode) =>
    expect(key(written)).toMatchObject({ tonic, mode }),
  );
  it('K:D =c leaves F sharp only', () => {
    expect(key('D =c').alters).toMatchObject({ F: 1, C: 0 });
    expect(names('X:1\nT:T\nK:D =c\nf c')).toBe('F#5 C5');
  });
  it("C' is c", () => expect(names("X:1\nT:T\nK:C\nC' c C, c'")).toBe('C5 C5 C3 C6'));
  it('K:none alters nothing', () =>
    expect(key('none')).toMatchObject({ mode: 'none', fifths: 0, alters: { F: 0, C: 0 } }));
  it('changes in the middle of a tune', () =>
    expect(names('X:1\nT:T\nK:D\nf [K:F]b f|\nK:A\ng')).toBe('F#5 Bb5 F5 G#5'));
  it('sounds an octave lower under treble-8', () =>
    expect(names('X:1\nT:T\nK:C clef=treble-8\nc')).toBe('C4'));
});

describe('signatures against tonal', () => {
  const tonics = letters.flatMap(l => [l, `${l}#`, `${l}b`]);
  const modes = ['lydian', 'mixolydian', 'dorian', 'phrygian', 'locrian'] as const;
  it('agrees on every major and minor key of up to seven signs', () => {
    for (const tonic of tonics) {
      const major = Key.majorKey(tonic);
      if (Math.abs(major.alteration) <= 7) expect(fifthsOf(tonic, 'major')).toBe(major.alteration);
      const minor = Key.minorKey(tonic);
      if (Math.abs(minor.alteration) <= 7) expect(fifthsOf(tonic, 'minor')).toBe(minor.alteration);
    }
  });
  it('agrees on every mode, note by note', () => {
    let compared = 0;
    for (const tonic of tonics) {
      for (const mode of modes) {
        const { alters, fifths } = keyOf(tonic, mode);
        if (Math.abs(fifths) > 7) continue;
        for (const name of Mode.notes(mode, tonic)) {
          const { letter, alt } = Note.get(name);
          expect([tonic, mode, letter, alters[letter as keyof typeof alters]]).toEqual([
            tonic,
            mode,
            letter,
            alt,
          ]);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(400);
  });
  it('agrees on pitch names and MIDI numbers from C2 to B6', () => {
    for (let octave = 2; octave <= 6; octave++) {
      for (const letter of letters) {
        for (const sign of ['bb', 'b', '', '#', '##']) {
          const name = `${letter}${sign}${octave}`;
          const pitch = parsePitch(name);
          expect([name, pitch?.midi]).toEqual([name, Note.midi(name)]);
          expect(pitch && pitchName(pitch)).toBe(name);
        }
      }
    }
  });
});
