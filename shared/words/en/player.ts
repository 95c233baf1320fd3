import type { PaceName } from '../../bowing/paces.ts';
import type { LiltRange } from '../../sound/lilt.ts';
import type { BeatPhrases } from '../beats.ts';
import { decimal } from './grammar.ts';

export const beats: BeatPhrases = {
  named: {
    '1': 'semibreve',
    '1/2': 'minim',
    '1/4': 'crotchet',
    '1/8': 'quaver',
    '1/16': 'semiquaver',
    '3/4': 'dotted minim',
    '3/8': 'dotted crotchet',
    '3/16': 'dotted quaver',
  },
  partOfWhole: part => `${part} of a semibreve`,
};

const paces: Readonly<Record<PaceName, string>> = {
  learning: 'learning',
  slow: 'slow',
  session: 'session',
};

/** What stands on the player and the recordings. */
export const playerWords = {
  listen: (title: string): string => `Listen to ${title}`,
  play: 'Play',
  stop: 'Stop',
  failed: 'The sound could not be made ready. Open the page again to have another try.',
  slower: 'Slower',
  faster: 'Faster',
  what: 'What to hear',
  whole: 'All of it',
  part: (name: string): string => `Part ${name}`,
  into: (bars: string): string => `The way into ${bars}`,
  phrase: (label: string, bars: string): string => `Phrase ${label}, ${bars}`,
  phrases: (from: string, to: string): string => `From ${from} to ${to}`,
  touch:
    'Touch a phrase in the notes to hear it alone; touch a second to hear from the one to the other.',
  choose: 'What to hear, how fast, and other ways to practise',
  speed: 'How fast',
  paces,
  percent: 'Finer: part of that tempo',
  tempo: (beat: string, perMinute: number, pace: PaceName, percent: number): string =>
    percent === 100
      ? `${beat} = ${Math.round(perMinute)}, ${paces[pace]}`
      : `${beat} = ${Math.round(perMinute)}, ${percent} % of ${paces[pace]}`,
  climbing: (beat: string, perMinute: number): string => `${beat} = ${perMinute}, climbing`,
  loop: 'Loop',
  more: 'Ways to practise',
  breath: 'Between one time and the next',
  breaths: {
    0: 'no breath',
    1: 'a breath of one beat',
    2: 'a breath of two beats',
    4: 'a breath of four beats',
  },
  answer: 'Call and response: silence as long as the call, for you to answer',
  countIn: 'Count me in',
  pulse: 'Let me hear the beat',
  pass: 'Which time through',
  passes: (n: number): string =>
    ({ 1: 'first time', 2: 'second time', 3: 'third time' })[n] ?? `time ${n}`,
  climb: 'Climb: faster as it goes round',
  climbBy: 'Faster by',
  beatsMore: (n: number): string => (n === 1 ? '1 beat a minute' : `${n} beats a minute`),
  climbEvery: 'Each',
  everyTimes: (n: number): string => (n === 1 ? 'time round' : `${n} times round`),
  climbTo: 'Up to',
  lilt: (kind: LiltRange['kind']): string =>
    kind === 'pairs' ? 'Lilt of the pairs, long to short' : 'Lilt of the threes',
  even: 'even',
  decimal,
  dots: 'Ease the written dots to the same lilt',
  caution:
    'Start softly. Take five minutes off in every half hour; stop if it hurts or your ears ring, and see a doctor or a physiotherapist if it lasts.',
  model:
    'The sound is made here from the strokes of this page: a model of a bowed string, not a player. Down-bows are brighter, up-bows softer.',
  recording: (title: string): string => `A recording of ${title}`,
  elsewhere:
    'This recording is kept on another site. The link goes there; this page loads nothing from it.',
  clipPhrases: 'Touch a phrase to hear it from the recording',
  clipSpeed: 'Speed',
  clipPercent: (percent: number): string => `${percent} %`,
} as const;
