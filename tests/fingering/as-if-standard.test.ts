import { describe, expect, it } from 'vitest';
import { asIfStandard } from '../../shared/fingering/as-if-standard.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { stopsOf } from '../../shared/fingering/stops-of.ts';
import { fiddleTuning, parseTuning } from '../../shared/fingering/tunings.ts';
import { parsePitch, pitchName } from '../../shared/music/pitch.ts';

/** What a pitch on a string of a retuned fiddle would be on a fiddle as it comes. */
function asIf(strings: string, string: number, name: string): string {
  const tuning = parseTuning(strings) as Tuning;
  const p = parsePitch(name);
  const stop = p && stopsOf(p, tuning).find(s => s.string === string);
  if (!p || !stop) throw new Error(`${name} is not on string ${string} of ${strings}`);
  return pitchName(asIfStandard(p, stop, tuning));
}

describe('as if in standard tuning', () => {
  it('is a tone lower on strings pulled up a tone, and itself on the others', () => {
    // AEAE, reckoned by hand: G A B C on the lowest string for A B C# D.
    expect(['A3', 'B3', 'C#4', 'D4'].map(p => asIf('AEAE', 4, p))).toEqual(
      'G3 A3 B3 C4'.split(' '),
    );
    expect(['E4', 'F#4', 'G4', 'A4'].map(p => asIf('AEAE', 3, p))).toEqual(
      'D4 E4 F4 G4'.split(' '),
    );
    expect(['A4', 'C#5'].map(p => asIf('AEAE', 2, p))).toEqual(['A4', 'C#5']);
    expect(asIf('AEAE', 1, 'F#5')).toBe('F#5');
  });
  it('is higher on a string let down', () => {
    // AEAC#: the top string a third down.
    expect(['C#5', 'D5', 'E5', 'F#5'].map(p => asIf('AEAC#', 1, p))).toEqual(
      'E5 F5 G5 A5'.split(' '),
    );
    expect(asIf('DDAE', 4, 'E3')).toBe('A3');
  });
  it('spells by the letter steps above the string, where the note can be spelled so', () => {
    // On the low E of AEAE: E sharp is to E what D sharp is to D, and C, five letters up, is B flat.
    expect(asIf('AEAE', 3, 'E#4')).toBe('D#4');
    expect(asIf('AEAE', 3, 'C5')).toBe('Bb4');
  });
  it('spells by the finger where the letter would need a double sharp', () => {
    // A double sharp on the low A is stopped by the first finger: on the G string that is A.
    expect(asIf('AEAE', 4, 'A##3')).toBe('A3');
  });
  it('leaves a note on a string that is not retuned as it is written, however that is', () => {
    expect(asIf('AEAE', 1, 'E##5')).toBe('E##5');
  });
  it('keeps semitones and finger from the open string for every note of every string', () => {
    for (const name of ['AEAE', 'AEAC#', 'ADAE', 'DDAE', 'GDGD', 'EbBbFC']) {
      const tuning = parseTuning(name);
      if (!tuning) continue;
      tuning.forEach((open, i) => {
        for (let semitones = 0; semitones <= 8; semitones++) {
          for (const letter of ['C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'B']) {
            const p = [2, 3, 4, 5, 6]
              .map(o => parsePitch(`${letter}${o}`))
              .find(q => q?.midi === open.midi + semitones);
            const stop = p && stopsOf(p, tuning).find(s => s.string === i + 1);
            if (!p || !stop) continue;
            const usual = fiddleTuning[i] as Tuning[number];
            expect(asIfStandard(p, stop, tuning).midi - usual.midi, `${name} ${pitchName(p)}`).toBe(
              semitones,
            );
          }
        }
      });
    }
  });
});
