/** Header fields of ABC 2.1, section 3.1. */
import { describe, expect, it } from 'vitest';
import { tuneType } from '../../src/abc/tune-type.ts';
import { notesOf, readTune } from './read-abc.ts';

const { tune } = readTune(`X:7
T:The Lamp-Lighter's Reel
T:Ladder at Dusk
C:A. Teacher
O:Nowhere
S:the Tuesday class
B:the blue book
Z:written down by hand
N:slowly at first
R:reel
Q:1/2=80
M:C|
L:1/8
K:EDor
|:E2"Em"BE G2BE|
w:one two three four five six
[M:6/8][K:A]c3 a3:|
`);

it('reads titles, credits and speed', () => {
  expect(tune).toMatchObject({
    id: 'the-lamp-lighters-reel',
    title: "The Lamp-Lighter's Reel",
    aliases: ['Ladder at Dusk'],
    type: 'reel',
    rhythm: 'reel',
    unit: { n: 1, d: 8 },
    tempo: { beat: { n: 1, d: 2 }, bpm: 80 },
    meter: { beats: 2, unit: 2, sign: 'cut' },
    key: { tonic: 'E', mode: 'dorian', fifths: 2 },
    credits: {
      composer: 'A. Teacher',
      origin: 'Nowhere',
      source: 'the Tuesday class',
      book: 'the blue book',
      transcription: 'written down by hand',
      notes: 'slowly at first',
    },
  });
});
it('reads words and chord symbols', () => {
  const notes = notesOf(tune);
  expect(notes.slice(0, 6).map(n => n.lyric)).toEqual([
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
  ]);
  expect(notes.map(n => n.chord)).toEqual([null, 'Em', ...Array(6).fill(null)]);
});
it('changes metre and key at the bar that says so', () =>
  expect(tune.bars.map(b => [b.meter.beats, b.key.tonic])).toEqual([
    [2, 'E'],
    [6, 'A'],
  ]));
it('needs neither X: nor T:', () => {
  const bare = readTune('M:3/4\nL:1/4\nK:G\nGBd|').tune;
  expect([bare.title, bare.id, bare.bars.length]).toEqual(['Untitled', 'untitled', 1]);
});
it('passes over fields that the standard does not use', () =>
  expect(notesOf(readTune('X:1\nT:T\nY:AB\nE:3\nK:G\nG').tune)).toHaveLength(1));

describe('R: names a type, however it is written', () => {
  it.each([
    ['double jig', 'jig'],
    ['Jig', 'jig'],
    ['slip jig', 'slip jig'],
    ['hop jig', 'slip jig'],
    ['Slip-Jig', 'slip jig'],
    ['Hornpipe', 'hornpipe'],
    ['air', 'air'],
    ['slow air', 'air'],
    ['polka', 'polka'],
    ['Irish slide', 'slide'],
    ['Waltz', 'waltz'],
    ['strathspey', 'strathspey'],
    ['quickstep', 'march'],
    ['6/8 march', 'march'],
    ['barn dance', null],
    ['fair', null],
  ])('%s', (rhythm, type) => expect(tuneType(rhythm)).toBe(type));
});
