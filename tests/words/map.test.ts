import { describe, expect, it } from 'vitest';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { readTune } from '../fingering/read-tune.ts';

const { mapSentences } = wordsFor('en', 'letters');

describe('the map in sentences', () => {
  const tune = readTune('K:G\nGABc d2BG|ABcA G4|e2f2 g4|d8|GABc d2BG|ABcA G4|GABc d2BG|AFED G4|]');
  const said = mapSentences(tune, mapSections(tune), 'letters');

  it('says what each phrase is to another, and where they part', () => {
    expect(said.phrases).toEqual([
      'A phrase of its own.',
      'A phrase of its own.',
      'The same as A1-A2.',
      'Starts like A1-A2 and ends in its own way; the first note that differs is note 2 of A8, F sharp.',
    ]);
  });
  it('says forks and what is to be learnt', () => {
    expect(said.forks).toEqual([
      'Phrase a goes on in two ways: after A1-A2 comes b (A3-A4), after A5-A6 comes a′ (A7-A8).',
    ]);
    expect(said.toLearn).toBe(
      'Three different phrases to learn, in this order: a, b, a′. The other one comes free, since it repeats.',
    );
  });
});

it('has a sentence for every rule of the fingering', () => {
  const abc = "K:C\nF,4 d'4|e'4 [B,C]4|[D^f]4 !0!B4|]";
  const { problems } = assignFingers(readTune(abc), fiddleTuning);
  const said = problems.map(p => wordProblem(p).message);
  expect(said).toEqual([
    'The chord B3 C4 at note 2 of A2 has two notes that need the same string.',
    'The chord D4 F#5 at note 1 of A3 needs strings that are not neighbours, so the bow cannot play it.',
    'No string has B4 at note 2 of A3 under finger 0 in first position.',
    'F3 (once, first at note 1 of A1) is lower than the lowest string, G3.',
    'D6 (once, first at note 2 of A1) cannot be reached in first position.',
    'E6 (once, first at note 1 of A2) cannot be reached in first position.',
  ]);
  expect(problems.map(p => wordProblem(p).mend).slice(-2)).toEqual([
    'Shift to third position and take it with finger 4 on string 1, or transpose the tune.',
    'Shift to fifth position and take it with finger 3 on string 1, or transpose the tune.',
  ]);
});
