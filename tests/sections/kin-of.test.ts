import { describe, expect, it } from 'vitest';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { readTune } from '../fingering/read-tune.ts';

/** How the second half of a tune stands to its first half, each taken for one phrase. */
function kin(abc: string, meter = '4/4'): string | undefined {
  const tune = readTune(`X:1\nT:Test\nM:${meter}\nL:1/8\nK:G\n${abc}]`);
  const map = mapSections(tune, tune.bars.length / 2);
  expect(map.phrases).toHaveLength(2);
  return map.phrases[1]?.kin;
}

describe('how much two phrases must have in common', () => {
  it('one note is no kinship: any two phrases may begin, or end, on the same one', () => {
    expect(kin('G4 d4|G4 e4|')).toBe('own');
    expect(kin('d4 G4|e4 G4|')).toBe('own');
  });
  it('two notes are, where the halves that hold them agree', () => {
    expect(kin('G2A2 d4|G2A2 e4|')).toBe('ending');
    expect(kin('d2efG2A2|g2gaG2A2|')).toBe('start');
  });
  it('a whole bar is, be it one long note', () => {
    expect(kin('G8|A2B2 c4|G8|d2e2 f4|')).toBe('ending');
    expect(kin('A2B2 c2d2|G8|e2f2 g2a2|G8|')).toBe('start');
    expect(kin('G8|A2B2 c2d2|e8|G8|d2e2 f2g2|a8|')).toBe('varied');
  });
  it('but not a bar of which one has more', () => {
    // The bar G A B c stands in the second with a note on its last quaver too.
    expect(kin('e2f2 g2a2|G2A2 B2c2|B2A2 G2F2|G2A2 B2cd|')).toBe('own');
  });
  it('a bar alike at another place is not heard as the same bar', () => {
    expect(kin('G2A2 B2c2|e2d2 c2e2|c2e2 d2f2|G2A2 B2c2|')).toBe('own');
  });
});

describe('how much a variation may change', () => {
  // Twelve quavers of a jig, with a change in either bar: up to a third of them may be others.
  const jig = 'GAB cde|dcB AGF|';
  it.each([
    ['three of twelve', 'GdB cde|dgB AdF|', 'varied'],
    ['four of twelve', 'GdB cge|dgB AdF|', 'varied'],
    ['five of twelve', 'GdB cge|dgB AdE|', 'own'],
  ])('%s', (_, second, expected) => expect(kin(jig + second, '6/8')).toBe(expected));
});

describe('where the halves part', () => {
  const first = 'GABc d2BG|ABcA G2FE|';
  it.each([
    ['from the first note of the second half on', 'GABc d2BG|fgag f2ed|', 'ending'],
    ['from the last note of the first half on', 'GABc d2Be|fgag f2ed|', 'own'],
    ['up to the last note of the first half', 'efga b2ad|ABcA G2FE|', 'start'],
    ['past it, up to the first note of the second', 'efga b2ad|dBcA G2FE|', 'own'],
    ['at one or two notes of the first half, which vary it', 'GdBc d2eG|ABcA G2FE|', 'varied'],
    ['at three of them, which make another start', 'GdBe d2eG|ABcA G2FE|', 'start'],
  ])('%s', (_, second, expected) => expect(kin(first + second)).toBe(expected));

  it('in a phrase of three bars, half way through the middle one', () => {
    const stem = 'GABc d2BG|ABcA ';
    expect(kin(`${stem}G2FE|d4 B4|${stem}e2ef|g4 a4|`)).toBe('ending');
    expect(kin(`${stem}G2FE|d4 B4|GABc d2BG|ABcd e2ef|g4 a4|`)).toBe('varied');
  });
  it('the shorter of two phrases says where half way is', () => {
    // A phrase of three bars after one of two: the bar they share is half of the shorter.
    const map = mapSections(readTune('K:G\nGABc d2BG|ABcA G2FE|GABc d2BG|fgag f2ed|g8|]'));
    expect(map.phrases.map(p => p.bars.length)).toEqual([2, 3]);
    expect(map.phrases[1]?.kin).toBe('ending');
  });
  it('another start is of the same length', () => {
    const map = mapSections(readTune('K:G\nGABc d2BG|ABcA G2FE|efga b2ad|ABcA G2FE|g8|]'));
    expect(map.phrases.map(p => [p.bars.length, p.kin])).toEqual([
      [2, 'own'],
      [3, 'varied'],
    ]);
  });
});

describe('a phrase moved', () => {
  it('has three notes at least: any one or two might be any others', () => {
    expect(kin('G8|A8|')).toBe('own');
    expect(kin('G4 B4|A4 c4|')).toBe('own');
    expect(kin('G2 B2 d4|A2 c2 e4|')).toBe('moved');
  });
  it('is heard by step in the key, and by semitone out of it', () => {
    // A third is major in the one and minor in the other.
    expect(kin('G2 A2 B4|A2 B2 c4|')).toBe('moved');
    // Up a semitone throughout, in letters that do not keep step.
    expect(kin('G2 A2 B4|^G2 _B2 c4|')).toBe('moved');
    expect(kin('G2 A2 B4|A2 B2 d4|')).toBe('own');
  });
  it('keeps its rhythm', () => {
    expect(kin('G2 A2 B4|A4 B2 c2|')).toBe('own');
    expect(kin('G2 A2 B4|A2 B2 c2c2|')).toBe('own');
  });
  it('keeps what is tied over into it', () => {
    expect(kin('G2 A2 B4-|B2 A2 G4|')).toBe('own');
    // A8 is held over the bar line into the one, and begins afresh in the other.
    const [, , , fourth] = mapSections(readTune('K:G\nd8-|d2 e2 f4|g8|g2 a2 b4|]'), 1).phrases;
    expect(fourth?.kin).toBe('own');
  });
  it('has as many bars', () => {
    const map = mapSections(readTune('K:G\nG4 A4|B4 G4|A4 B4|c4 A4|z8|]'));
    expect(map.phrases.map(p => p.bars.length)).toEqual([2, 3]);
    expect(map.phrases[1]?.kin).toBe('own');
  });
});

describe('what counts as a difference', () => {
  it('a note that begins where the other phrase is silent', () => {
    // G after a crotchet rest, against two crotchets on G: they differ at the first place only.
    const tune = readTune('K:G\nz2 G2 A4|G2 G2 A4|]');
    const [, second] = mapSections(tune, 1).phrases;
    expect(second?.kin).toBe('varied');
    expect(second?.firstDifference).toBe(tune.bars[1]?.first);
  });
  it('a note held over the bar line, against the same note played', () => {
    const tune = readTune('K:G\nd8-|d2 e2 f2 g2|z8|d2 e2 f2 g2|]');
    const fourth = mapSections(tune, 1).phrases[3];
    expect(fourth).toMatchObject({ kin: 'varied', of: 1, firstDifference: tune.bars[3]?.first });
  });
  it('a bar of silence at the end, which lengthens the phrase and changes no note', () => {
    const map = mapSections(readTune('K:G\nGABc d2BG|ABcA G2FE|GABc d2BG|ABcA G2FE|z8|]'));
    expect(map.phrases.map(p => [p.bars.length, p.kin])).toEqual([
      [2, 'own'],
      [3, 'ending'],
    ]);
    expect(map.phrases[1]?.firstDifference).toBeNull();
  });
  it('so another start with such a bar is a variation: the two are not as long', () => {
    const map = mapSections(readTune('K:G\nGABc d2BG|ABcA G2FE|efga b2ad|ABcA G2FE|z8|]'));
    expect(map.phrases.map(p => p.kin)).toEqual(['own', 'varied']);
  });
});

it('two bars of rest are the same two bars', () => expect(kin('z8|z8|')).toBe('same'));

describe('the same notes in another rhythm', () => {
  it('are a form of theirs, as where dots are reversed', () => {
    expect(kin('G3A B3c|d3c B3A|GA3 Bc3|dc3 BA3|')).toBe('varied');
    expect(kin('G3A B3c|d3c B3A|G2A2 B2c2|d2c2 B2A2|')).toBe('varied');
  });
  it('but not in other bars, nor with other notes', () => {
    expect(kin('G3A B3c|d3c B3A|f3G A3B|c3d c3B|')).toBe('own');
  });
});

describe('the forms of one letter', () => {
  // Each bar of two changes in turn: every phrase is like the one before, the last like none of the first.
  const bars = ['GABc d2e2', 'dcBA G2F2', 'efga b2a2', 'gfed c2B2', 'ABcd e2f2', 'bagf e2d2'];
  const chain = bars.slice(1).map((bar, i) => `${i % 2 ? bar : bars[i]}|${i % 2 ? bars[i] : bar}`);
  it('are three at most, however long the chain of small changes', () => {
    const tune = readTune(`X:1\nT:Test\nM:4/4\nL:1/8\nK:G\n${chain.join('|')}|]`);
    const labels = mapSections(tune).phrases.map(p => p.label);
    expect(labels).toEqual(['a', 'a′', 'a′′', 'b', 'b′']);
  });
});
