import { describe, expect, it } from 'vitest';
import type { BowingStudy, Stroke } from '../../shared/bowing/bowing.ts';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fingerOf } from '../../shared/fingering/finger-of.ts';
import type { Stop, Tuning } from '../../shared/fingering/fingering.ts';
import { fiddleTuning, parseTuning } from '../../shared/fingering/tunings.ts';
import { type Pitch, parsePitch } from '../../shared/music/pitch.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import type { Study } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { readTune } from '../fingering/read-tune.ts';

const { speakTune, spokenNote, spokenPitch, stringNames } = wordsFor('en', 'letters');

const at = (name: string): Pitch => parsePitch(name) as Pitch;

function stopOn(string: number, p: Pitch, tuning: Tuning = fiddleTuning): Stop {
  const open = tuning[string - 1] as Pitch;
  const semitones = p.midi - open.midi;
  return { string, finger: fingerOf(p, open) ?? -1, semitones, stretched: semitones === 8 };
}

/** A study whose strokes are given as the number of sounded notes of each, down first. */
function studyOf(abc: string, strokes: readonly number[], varying: readonly number[] = []): Study {
  const tune = readTune(abc);
  const performance = playedOrder(tune);
  const strokeOf = strokes.flatMap((count, i) => Array<number>(count).fill(i));
  expect(strokeOf).toHaveLength(performance.notes.length);
  const laid = strokes.map(
    (_, i): Stroke => ({
      direction: i % 2 === 0 ? 'down' : 'up',
      pass: 1,
      notes: strokeOf.flatMap((s, n) => (s === i ? [n] : [])),
      stated: null,
      retake: false,
    }),
  );
  const plan = { strokes: laid, strokeOf };
  const bowing: BowingStudy = { plan, anchors: [], repeats: [], swaps: [], varying };
  const { fingering, problems } = assignFingers(tune, fiddleTuning);
  return {
    tune,
    performance,
    tuning: fiddleTuning,
    fingering,
    map: mapSections(tune),
    bowing,
    problems,
  };
}

describe('a note in words', () => {
  it('is its name, finger and string', () => {
    expect(spokenNote(stopOn(3, at('F#4')), at('F#4'), fiddleTuning, 'letters')).toBe(
      'F sharp, high 2 on D',
    );
    expect(spokenNote(stopOn(1, at('E5')), at('E5'), fiddleTuning, 'letters')).toBe('E, open E');
    expect(spokenNote(null, at('D6'), fiddleTuning, 'letters')).toBe('D, out of first position');
  });

  // Common practice, by semitones above the open string; 4 and 6 also have their other name.
  it.each([
    ['A4', 1, 'low 1'],
    ['B4', 2, '1'],
    ['C5', 3, 'low 2'],
    ['C#5', 4, 'high 2'],
    ['Db5', 4, 'low 3'],
    ['D5', 5, '3'],
    ['D#5', 6, 'high 3'],
    ['Eb5', 6, 'low 4'],
    ['E5', 7, '4'],
    ['E#5', 8, 'high 4'],
  ])('%s on A', (name, semitones, finger) => {
    const p = name === 'A4' ? at('Bb4') : at(name);
    expect(p.midi - 69).toBe(semitones);
    expect(spokenNote(stopOn(2, p), p, fiddleTuning, 'letters')).toBe(
      `${spokenPitch(p, 'letters')}, ${finger} on A`,
    );
  });

  it('tells strings of one letter apart', () => {
    expect(stringNames(fiddleTuning, 'letters')).toEqual(['E', 'A', 'D', 'G']);
    const aeae = parseTuning('AEAE') as Tuning;
    expect(stringNames(aeae, 'letters')).toEqual(['high E', 'high A', 'low E', 'low A']);
    const p = at('F#4');
    expect(spokenNote(stopOn(3, p, aeae), p, aeae, 'letters')).toBe('F sharp, 1 on low E, as if E');
    expect(stringNames(parseTuning(['A5', 'A4', 'D4', 'A3']) as Tuning, 'letters')).toEqual([
      'high A',
      'middle A',
      'D',
      'low A',
    ]);
  });
});

describe('a tune in words', () => {
  it('goes part by part, bar by bar, its notes gathered by stroke', () => {
    const study = studyOf('K:D\nA|d2 (ef) e4|(d2 [DA]2) z2 d2-|d8|]', [1, 1, 2, 1, 2, 1]);
    const [part, ...more] = speakTune(study, 'letters');
    expect(more).toEqual([]);
    expect(part?.part).toBe('A');
    expect(part?.bars.map(b => [b.name, b.phrase, b.text])).toEqual([
      ['A0', 'a', 'Down: A, open A.'],
      ['A1', null, 'Up: D, 3 on A. Down: E, open E; F sharp, 1 on E. Up: E, open E.'],
      ['A2', null, 'Down: D, 3 on A; D, open D together with A, open A. Rest. Up: D, 3 on A.'],
      ['A3', null, 'Still up: D, held.'],
    ]);
    expect(part?.bars[1]?.notes[2]).toEqual({
      event: 3,
      name: 'F sharp',
      register: 'middle',
      string: 'E',
      finger: '1',
      place: '1 on E',
      asIf: null,
      stroke: 'down',
      slurred: true,
      held: false,
      varying: false,
    });
  });

  it('says a stroke that runs over the bar line, and one that is turned round later', () => {
    const study = studyOf('K:D\nd4 (e4|f4) g4|]', [1, 2, 1], [0]);
    expect(speakTune(study, 'letters')[0]?.bars.map(b => b.text)).toEqual([
      'Down: D, 3 on A. Up: E, open E. Another time through, the strokes are turned round.',
      'Still up: F sharp, 1 on E. Down: G, low 2 on E.',
    ]);
  });

  it('says the first time through where a part is repeated', () => {
    const study = studyOf('K:D\n|:d4 e4 |f8:|]', [1, 1, 1, 1, 1, 1]);
    expect(speakTune(study, 'letters')[0]?.bars[0]?.notes.map(n => n.stroke)).toEqual([
      'down',
      'up',
    ]);
  });

  it('is said again of the same study, under each naming of notes', () => {
    const study = studyOf('K:D\nB4 c4|]', [1, 1]);
    const said = () =>
      (['letters', 'german', 'solfege'] as const).map(
        names => speakTune(study, names)[0]?.bars[0]?.text,
      );
    const texts = [
      'Down: B, 1 on A. Up: C sharp, high 2 on A.',
      'Down: H, 1 on A. Up: Cis, high 2 on A.',
      'Down: si, 1 on la. Up: do sharp, high 2 on la.',
    ];
    expect([said(), said()]).toEqual([texts, texts]);
  });
});
