import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fingerOf } from '../../shared/fingering/finger-of.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { fiddleTuning, parseTuning } from '../../shared/fingering/tunings.ts';
import { readTune } from './read-tune.ts';

const aeae = parseTuning('AEAE') as Tuning;

/** `D2` for the second finger on the D string, `A0` for the open A string. */
function fingers(abc: string, tuning: Tuning = fiddleTuning): string {
  const { fingering } = assignFingers(readTune(abc), tuning);
  const stop = (s: (typeof fingering)[number][number]): string =>
    s ? `${tuning[s.string - 1]?.letter}${s.finger}` : '-';
  return fingering
    .flatMap(stops => (stops.length > 0 ? [stops.map(stop).join('+')] : []))
    .join(' ');
}
const rules = (abc: string, tuning: Tuning = fiddleTuning): string[] =>
  assignFingers(readTune(abc), tuning).problems.map(p => p.rule);

describe('the cheapest path', () => {
  // Common practice: the fourth finger saves leaving a string for one note.
  it.each([
    ['K:D\nd e d f|', 'A3 A4 A3 E1'],
    ['K:D\nd e f g|', 'A3 E0 E1 E2'],
    ['K:D\nd e e d|', 'A3 E0 E0 A3'],
    ['K:G\nG A G F|', 'D3 D4 D3 D2'],
    ['K:G\nG A B c|', 'D3 A0 A1 A2'],
    ['K:D\nd z e z|d4', 'A3 A4 A3'],
  ])('%s', (abc, path) => expect(fingers(abc)).toBe(path));

  it('plays the open scale in every key of up to three accidentals, by letter', () => {
    const keys = ['Eb', 'Bb', 'F', 'C', 'G', 'D', 'A'];
    for (const key of keys) {
      const tune = readTune(`K:${key}\nG, A, B, C D E F G|A B c d e f g a|b4 z4|]`);
      const { fingering, problems } = assignFingers(tune, fiddleTuning);
      expect(problems, key).toEqual([]);
      tune.events.forEach((e, i) => {
        if (e.kind !== 'note') return;
        const [p, stop] = [e.pitches[0], fingering[i]?.[0]];
        const open = fiddleTuning[(stop?.string ?? 0) - 1];
        if (!p || !stop || !open) throw new Error(`${key}: no stop`);
        expect(stop.semitones).toBe(p.midi - open.midi);
        expect(stop.finger).toBe(fingerOf(p, open));
      });
      const letters = fingering.map(f => f[0]?.finger).filter(f => f !== undefined);
      const flat = { e: key === 'Eb' || key === 'Bb', a: key === 'Eb' };
      // G A B C, D E F G, A B C D, E F G A B; E flat and A flat are below their strings.
      // G sharp is Mozart's first finger on the G string.
      const low = [key === 'A' ? 1 : 0, 1, 2, 3, 0, 1, 2, 3];
      const high = [flat.a ? 4 : 0, 1, 2, 3, flat.e ? 4 : 0, 1, 2, 3, 4];
      expect(letters, key).toEqual([...low, ...high]);
    }
  });

  it('never costs more than any other way (brute force)', () => {
    const pitches = 'G, A, D E G A B d e f g a b'.split(' ');
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pitches), { minLength: 1, maxLength: 7 }), notes => {
        const tune = readTune(`M:none\nK:C\n${notes.join(' ')}|`);
        const { fingering } = assignFingers(tune, fiddleTuning);
        const path = fingering.flatMap(f => (f[0] ? [f[0]] : []));
        const ways = tune.events.map(e => {
          const p = e.kind === 'note' ? e.pitches[0] : undefined;
          return fiddleTuning.flatMap((open, i) => {
            const finger = p ? fingerOf(p, open) : null;
            return finger === null || !p ? [] : [{ string: i + 1, finger, s: p.midi - open.midi }];
          });
        });
        const cost = (
          way: readonly { string: number; finger: number; s?: number; semitones?: number }[],
        ) =>
          way.reduce((sum, w, i) => {
            const before = way[i - 1];
            const hand = w.finger === 0 ? 0 : w.finger === 4 ? 6 : 1;
            const stretch = (w.s ?? w.semitones) === 8 ? 6 : 0;
            return sum + hand + stretch + 4 * (before ? Math.abs(before.string - w.string) : 0);
          }, 0);
        let all: (typeof ways)[number][] = [[]];
        for (const choices of ways) all = all.flatMap(w => choices.map(c => [...w, c]));
        expect(cost(path)).toBe(Math.min(...all.map(cost)));
      }),
      { numRuns: 100 },
    );
  });
});

describe('written fingers', () => {
  it('win', () => {
    expect(fingers('K:D\nd !4!e f2|')).toBe('A3 A4 E1');
    expect(fingers('K:D\nd !0!e d2|')).toBe('A3 E0 A3');
    expect(fingers('K:D\nF !3!F !2!F|')).toBe('D2 D3 D2');
    expect(fingers('K:D\n!3!!1![GB]4|')).toBe('D3+A1');
  });
  it('that no string has are said and passed over', () => {
    expect(rules('K:D\nd !0!f d2|')).toEqual(['finger-mark']);
    expect(fingers('K:D\nd !0!f d2|')).toBe('A3 E1 A3');
  });
});

describe('double stops', () => {
  it('lie on neighbouring strings', () => {
    expect(fingers('K:D\n[DA]4 [Ae]4|')).toBe('D0+A0 A0+E0');
    expect(fingers('K:D\n[AA]4 [FA]4|')).toBe('D4+A0 D2+A0');
    expect(fingers('K:D\n[de]4|')).toBe('A3+E0');
    expect(fingers('K:D\n[De]4|')).toBe('D0+A4');
  });
  it('that need strings apart are reported', () => {
    expect(rules('K:D\n[Df]4|')).toEqual(['chord-strings']);
    expect(fingers('K:D\n[Df]4|')).toBe('D0+E1');
  });
  it('with two notes for one string are reported, the top one kept', () => {
    const { problems, fingering } = assignFingers(readTune('K:C\n[G,A,]4|'), fiddleTuning);
    expect(problems[0]?.facts).toMatchObject({ strings: 'too-few' });
    expect(fingering[0]?.map(s => s?.finger ?? null)).toEqual([null, 1]);
  });
});

describe('first position', () => {
  it('ends at high C, a stretched fourth finger', () => {
    const stop = assignFingers(readTune("K:C\nc'4|"), fiddleTuning).fingering[0]?.[0];
    expect(stop).toEqual({ string: 1, finger: 4, semitones: 8, stretched: true });
  });
  it.each([
    ["d'", { position: 3, finger: 4, string: 1 }],
    ["^c'", { position: 3, finger: 3, string: 1 }],
    ["e'", { position: 5, finger: 3, string: 1 }],
    ["a'", { position: 7, finger: 4, string: 1 }],
  ])('suggests a shift for %s', (note, shift) => {
    const { problems, fingering } = assignFingers(
      readTune(`K:C\n${note}4|${note}4|`),
      fiddleTuning,
    );
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      rule: 'out-of-reach',
      facts: { where: 'above', ...shift, times: 2 },
    });
    expect(fingering).toEqual([[null], [null]]);
  });
  it('begins at the lowest string', () => {
    const found = assignFingers(readTune('K:C\n^F,4 G,4|'), fiddleTuning);
    expect(found.problems[0]).toMatchObject({ facts: { where: 'below' }, expected: ['G3'] });
    expect(found.fingering[1]?.[0]?.string).toBe(4);
    expect(rules('K:A\nG,4 A,4|', aeae)).toEqual(['out-of-reach']);
  });
});

it('fingers a retuned fiddle by its own strings', () => {
  // AEAE: C sharp lies two letters above A, on the low string as on the high.
  expect(fingers('K:A\nA, B, C D|E F G A|', aeae)).toBe('A0 A1 A2 A3 E0 E1 E2 A0');
  // A cut short: on the low E string the A is the third finger, saving two crossings.
  expect(fingers('K:A\nG A G2|', aeae)).toBe('E2 E3 E2');
});

describe('a tied note', () => {
  // It is one note: no string can be left in the middle of it.
  it('stays on one string', () => {
    expect(fingers('K:D\nd e-|e d|')).toMatch(/A3 (A4 A4|E0 E0) A3/);
    expect(fingers('K:D\n[DA]2 A2-|A4|')).toBe('D0+A0 A0 A0');
  });
  it('has the finger written on any of it, to its end', () => {
    // The open E would save the little finger the second half, but not without leaving the string.
    expect(fingers('K:D\nd !4!e-|e f|')).toBe('A3 A4 A4 E1');
    expect(fingers('K:D\nf e-|!4!e d|')).toBe('E1 A4 A4 A3');
    expect(fingers('K:D\nd !4!e-|e-|e f|')).toBe('A3 A4 A4 A4 E1');
  });
  it('changes its string where the teacher writes it so, which is not ours to mend', () => {
    expect(fingers('K:D\nd !4!e-|!0!e f|')).toBe('A3 A4 E0 E1');
  });
  it('frees the next note where it is not tied', () => {
    expect(fingers('K:D\nd !4!e|e f|')).toBe('A3 A4 E0 E1');
  });
});

describe('where the hand would rather not go', () => {
  it('the fourth finger is not stretched for a note that another string has close by', () => {
    // D sharp is the first finger on the D string; on the G string it is the fourth, stretched.
    expect(fingers('K:E\nE D E2|')).toBe('D1 D1 D1');
  });
  it('but for one such note between two on the G string the bow stays', () => {
    // B D# B in E: the finger slides back on the D string, or reaches out on the G string.
    expect(fingers('K:E\nB, D B,2|')).toBe('G2 G4 G2');
  });
  it('D sharp after a note on the G string is Mozart’s fourth finger there', () => {
    // His chart (Violinschule 1756, p. 68) has D sharp on the G string, and none on the D string.
    expect(fingers('K:E\nB,4 D4|')).toBe('G2 G4');
  });
  it('no finger is called stretched but the fourth eight semitones up', () => {
    const tune = readTune("K:C\nG,A,B,C DEFG|ABcd efga|bc' z6|]");
    const stops = assignFingers(tune, fiddleTuning).fingering.flat();
    expect(stops.filter(s => s?.stretched)).toEqual([stops.at(-1)]);
  });
  it('high C takes the stretched fourth finger, for nothing else has it', () => {
    expect(fingers("K:C\na b c'2|")).toBe('E3 E4 E4');
  });
  it('one finger does not stop two places of a double stop, where another hold will do', () => {
    // F sharp and C natural: the second finger high on the D string and low on the A string.
    expect(fingers('K:G\n[Fc]4|')).toBe('D2+A2');
    // F and C lie side by side under one finger.
    expect(fingers('K:C\n[Fc]4|')).toBe('D2+A2');
    // D sharp and A: the fourth finger would have to lie on two places of the lower strings.
    expect(fingers('K:E\nB,2 [DA]2 B,4|')).toBe('G2 D1+A0 G2');
  });
  it('a string that a double stop has under the bow need not be crossed to', () => {
    expect(fingers('K:D\n[DA]2 A2 G2 F2|')).toBe('D0+A0 A0 D3 D2');
  });
});

describe('what is said of a note that cannot be fingered', () => {
  const problems = (abc: string, tuning: Tuning = fiddleTuning) =>
    assignFingers(readTune(abc), tuning).problems;
  it('names the fingers that would do', () => {
    expect(problems('K:D\nd !0!f d2|')).toMatchObject([
      { rule: 'finger-mark', actual: '0', expected: ['1'], facts: { note: 'A1:2', pitch: 'F#5' } },
    ]);
    expect(problems('K:G\n!4![GB]4|')).toMatchObject([
      { severity: 'warning', expected: ['3 1'], facts: { pitch: 'G4 B4' } },
    ]);
    expect(problems('K:D\n!2!e4|')).toMatchObject([{ actual: '2', expected: ['0', '4'] }]);
    expect(problems('K:D\n!3!!3![GB]4|')).toMatchObject([{ actual: '3 3', expected: ['3 1'] }]);
  });
  it('names the pitches of a chord that lie on strings apart, or on too few', () => {
    expect(problems('K:D\n[Df]4|')).toMatchObject([
      { rule: 'chord-strings', actual: 'D4 F#5', facts: { note: 'A1:1', strings: 'apart' } },
    ]);
    expect(problems('K:C\n[G,A,]4|')).toMatchObject([
      { severity: 'warning', actual: 'G3 A3', facts: { strings: 'too-few' } },
    ]);
    expect(fingers('K:C\n[G,A,B,]4|')).toBe('-+-+G2');
  });
  it('warns once of a pitch out of reach, however often it is written and in which chord', () => {
    const found = problems("K:C\nd'4 [gd']4|e'8|");
    expect(found).toMatchObject([
      { rule: 'out-of-reach', severity: 'warning', facts: { pitch: 'D6', times: 2 } },
      { rule: 'out-of-reach', severity: 'warning', facts: { pitch: 'E6', times: 1 } },
    ]);
    expect(problems('K:C\nF,8|')).toMatchObject([{ severity: 'warning', actual: 'F3' }]);
  });
  it('plays what of a chord is in reach', () => {
    expect(fingers("K:C\n[gd']4|")).toBe('E2+-');
    expect(fingers('K:C\n[F,D]4|')).toBe('-+D0');
  });
  it('gives every rest nothing, and every pitch a place of its own in the answer', () => {
    const { fingering } = assignFingers(readTune("K:C\nz4 [F,D]2 d'2|"), fiddleTuning);
    expect(fingering.map(f => f.map(s => s?.finger ?? null))).toEqual([[], [null, 0], [null]]);
  });
});
