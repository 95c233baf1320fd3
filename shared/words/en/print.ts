import type { FactsOf } from '../../rules.ts';
import type { Messages } from '../problem-words.ts';

/** The words of what is printed: sheets, the tune book, the pocket booklet. */
export const printWords = {
  contents: 'Contents',
  howToRead: 'How to read the marks',
  page: 'page',
  pageAfter: (page: string): string => `, page ${page}`,
  tunes: 'Tunes',
  moreTunes: 'More tunes',
  moreTunesLead: 'Tunes of the class that no lesson has taken up yet.',
  tunesOfLesson: 'In this lesson',
  sets: 'Played together',
  setsLead: 'Tunes in a row, with the times through.',
  drills: 'Drills',
  answers: 'Answers to the drills',
  drillsLead:
    'Play first, then answer. The answers stand at the back, so that you need not see them too soon.',
  drillNamed: (n: number, kind: string, tune: string): string => `Drill ${n}. ${kind}: ${tune}`,
  titles: 'Index of titles',
  openings: 'Index of openings',
  openingsLead: 'The first bars of every tune, by title.',
  withheld: 'Not printed here',
  withheldLead:
    'It is not yet known who owns these tunes, so their notes are not printed. Ask your teacher.',
  withheldMark: 'not printed: rights not yet known',
  noTunes: 'There is no tune here that may be printed yet.',
  unreadable: 'The notation of this tune could not be drawn, so only its credits stand here.',
  alike: 'Where we all play alike',
  alikeAt: (bars: string, stroke: 'down' | 'up'): string =>
    `${bars}: reach it on ${stroke === 'down' ? 'a down-bow' : 'an up-bow'}.`,
  mapOf: (told: string): string => `Map of the tune. ${told}`,
  phraseTold: (label: string, bars: string, kin: string): string => `${label}, ${bars}: ${kin}`,
  alsoCalled: (aliases: string): string => `Also called ${aliases}`,
  otherName: (alias: string, title: string): string => `${alias}, see ${title}`,
  writtenBy: (teacher: string): string => `with ${teacher}`,
  step: (n: number): string =>
    ['Everything', 'Phrase starts', 'The map', 'First notes', 'The title'][n - 1] ?? '',
  stepOf: (title: string, n: number): string => `${title}: ${printWords.step(n).toLowerCase()}`,
  stepLead: (n: number): string =>
    [
      '',
      'What is left out you know by heart. Play it, and sing what you are not sure of first.',
      'Play the tune from its map. Where you are stuck, look at the sheet before this one.',
      'Three notes to begin with. The rest is in your ear and your hands.',
      'Only its name. Hum the beginning, find the first finger, and go.',
    ][n - 1] ?? '',
  fadedRow: (bars: string): string =>
    `${bars}: only the first notes of each phrase, and the notes that all play alike; the rest is an empty staff.`,
  firstNotesRow: (notes: string): string => `The first notes: ${notes}.`,
  openingRow: (notes: string): string => `It begins: ${notes}.`,
  waysTo: (tune: string): string => `Ways to get there in ${tune}`,
  recording: (words: string): string => `Recording: ${words} (on the pages of this book).`,
  care: 'Rest five minutes in every half hour. Stop if it hurts; see a doctor or a physiotherapist if it lasts.',
  pocketTitle: (book: string): string => `${book}: first bars`,
  pocketHow:
    'To make this booklet: print on both sides at full size, turned over the long edge. Cut every sheet across the middle, lay the lower half inside the upper and each sheet inside the one before it, fold, and staple the fold.',
  sheetsTitle: (book: string): string => `${book}: sheets`,
  download: {
    book: 'The tune book (PDF)',
    sheets: 'Every tune in large print (PDF)',
    pocket: 'First bars of every tune, to fold into a pocket booklet (PDF)',
    tune: 'Sheets to print, from everything to the title alone (PDF)',
  },
  forPaper: 'On paper',
} as const;

const whyNot: Readonly<Record<FactsOf<'print-picture'>['why'], string>> = {
  kind: 'paper cannot show this kind of file',
  missing: 'the file is missing',
  broken: 'the file does not open as a picture',
};

/** What could not be printed as it was written. */
export const printMessages = {
  'print-character': p => ({
    message: `No font of the print has the character ${p.actual} of ${p.facts.where}, so its number stands in its place on paper.`,
    mend: 'Write it otherwise, or in words. The pages on screen are not concerned.',
  }),
  'print-picture': p => ({
    message: `The picture ${p.actual} cannot be printed (${whyNot[p.facts.why]}), so only its words stand on paper.`,
    mend: `Put a picture that opens elsewhere too in its place: ${p.expected.join(', ')}.`,
  }),
  'print-long': p => ({
    message: `The tune "${p.facts.tune}" does not fit on two facing pages at this size, so a page must be turned inside it.`,
    mend: 'Print it for adults, or with fewer parts on the sheet.',
  }),
} satisfies Partial<Messages>;
