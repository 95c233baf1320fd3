import type { TuneType } from '../../music/tune.ts';

/** The site's own labels. Sentences about bowing, the map and notes are in their rooms' files. */
export const siteWords = {
  skip: 'Skip to the page',
  siteNav: 'This book',
  home: 'Start',
  lessons: 'Lessons',
  tunes: 'What we play',
  howToRead: 'How to read the marks',
  newest: 'The newest lesson',
  readLesson: 'Open the lesson',
  hearIt: 'Hear the tune',
  earlier: 'Earlier lessons',
  allLessons: 'All lessons',
  allTunes: 'All we play',
  noLessons: 'No lesson has been given yet. The first one will stand here.',
  noTunes: 'No tune has been written down yet.',
  about: 'About us',
  thisTunesHere: 'Tunes in this lesson',
  notation: 'Notation',
  map: 'How the tune is made',
  anchors: 'Where we all play alike',
  repeats: 'Round again',
  swaps: 'Other ways to bow a phrase',
  swapsHow:
    'Within a list, any way may stand for any other, and nothing after it changes. Each list has the ways in use and, of those that this level plays, the best three others at most.',
  keeps: 'The strokes after it stay as they are',
  flips: 'Every stroke after it turns round',
  phrase: (label: string): string => `Phrase ${label}`,
  takeAway: 'To take away',
  wholeSite: 'All these pages in one file (zip): unpack it, and open index.html in the folder',
  downloads: {
    abc: 'The tune as ABC, with every stroke and finger',
    mid: 'The tune to hear, repeats and all (MIDI)',
    musicxml: 'The tune for notation programs, with strokes, fingers and strings (MusicXML)',
    json: 'All that this page knows, as data (JSON)',
  },
  spoken: 'Note by note, in words',
  spokenHow:
    'Each line is one bar: the note, its finger and string, and the stroke it is played on.',
  story: 'About this tune',
  credits: 'Where it comes from',
  itsLessons: 'Lessons with this tune',
  tunePage: 'The whole tune',
  print:
    'To keep it on paper, print this page: the map, the notation and the credits fill one sheet.',
  marks: 'Stroke signs',
  marksAll: 'every stroke',
  marksStarts: 'phrase starts and where we play alike',
  marksAnchors: 'only where we play alike',
  fingers: 'finger numbers',
  letters: 'note letters',
  phraseLetters: 'phrase letters',
  showWith: 'Show with the notes',
  withheld:
    'The rights in this tune are not known, so its notes are not published here. Its map and where it comes from are.',
  unreadable: 'The notation of this tune could not be read, so only its story stands here.',
  noMap: 'This tune has no map yet.',
  private: 'The teacher’s own notes',
  privatePage: 'Private copy: it shows the teacher’s own notes. Do not publish it.',
  unfinished: 'unfinished',
  unfinishedPage:
    'Unfinished: this page says unfinished: true, so it is left out of the book that you publish.',
  anchor: 'All alike',
  why: 'Why',
  begins: (notes: readonly string[]): string =>
    notes.length === 0 ? '' : `Begins ${notes.join('; ')}.`,
  onString: (fingers: readonly number[], string: string): string =>
    `${fingers.join(' ')} on ${string}`,
  standsOut: 'What stands out',
  plan: 'Getting there',
  bestWays: 'The best ways',
  frog: 'frog',
  middle: 'middle',
  tip: 'tip',
  runsOut: 'runs out',
  drift: 'drift',
  bowModel:
    'Time runs down the page; each dot begins a note. It is a model: one speed throughout, and a whole bow as long as the longest stroke of this level. Where room is short, move the bow faster or slower.',
  everyStroke: 'Every stroke on the way',
  mends: 'One change that puts it right',
  down: 'down-bow',
  up: 'up-bow',
  retake: 'lift the bow',
  slurred: 'slurred',
  opening: 'Opens',
  asIfOpening: 'Opens, as if tuned G D A E',
  tuning: 'Strings',
  tunedTo: (strings: string): string =>
    `tuned ${strings}, lowest first; notes and letters are as they sound. Tune slowly, eyes away: a string can break and whip. If in doubt, loosen it and ask a luthier`,
  type: 'Type',
  key: 'Key',
  metre: 'Metre',
  form: 'Form',
  title: 'Tune',
  notFound: 'This page is not in the book',
  notFoundText:
    'Perhaps a lesson was renamed, or a letter in the address is wrong. Everything in the book can be reached from here:',
  madeWith: 'Made with Bowbook. Nothing on these pages asks any other place for anything.',
  licences: 'Licences of the type and the scripts',
  backToTop: 'Back to the top',
  held: 'held',
  footnotes: 'Footnotes',
  footnoteBack: (reference: string): string => `Back to reference ${reference}`,
  bar: (name: string, phrase: string | null): string =>
    phrase === null ? `Bar ${name}.` : `Phrase ${phrase}, bar ${name}.`,
  part: (name: string): string => `Part ${name}`,
  /** A drawn stretch of a tune; `bars` is A1 or A1-A2. */
  stave: (phrase: string | null, bars: string): string => {
    const many = bars.includes('-');
    const named = `${many ? 'bars' : 'bar'} ${bars.replace('-', ' to ')}`;
    return phrase === null ? named.replace('b', 'B') : `Phrase ${phrase}, ${named}`;
  },
  timesThrough: (n: number): string =>
    n === 1 ? 'once' : n === 2 ? 'twice' : n === 3 ? 'three times' : `${n} times`,
  taughtBy: (teacher: string): string => `with ${teacher}`,
  reachIt: (direction: 'down' | 'up'): string =>
    direction === 'down' ? 'Reach it on a down-bow.' : 'Reach it on an up-bow.',
  arrives: (direction: 'down' | 'up'): string =>
    `As written, the bow arrives on ${direction === 'down' ? 'a down-bow' : 'an up-bow'}, as it should.`,
  misses: (direction: 'down' | 'up'): string =>
    `As written, the bow arrives on ${direction === 'down' ? 'a down-bow' : 'an up-bow'}, the wrong way.`,
  anchorOf: (tune: string, bars: string): string => `${tune}, ${bars}`,
  planLevel: (level: string): string => `for the ${level}`,
} as const;

export const typeName: Readonly<Record<TuneType, string>> = {
  reel: 'reel',
  jig: 'jig',
  'slip jig': 'slip jig',
  hornpipe: 'hornpipe',
  polka: 'polka',
  slide: 'slide',
  waltz: 'waltz',
  strathspey: 'strathspey',
  march: 'march',
  air: 'slow air',
};

/** Left out where a title begins with one and is sorted; words with spaces between them. */
export const articles = 'the a an';
