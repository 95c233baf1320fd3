import type { FileFault } from '../../review/review-file.ts';
import { count } from './grammar.ts';

const faults: Readonly<Record<FileFault, (at: string) => string>> = {
  'too-long': () => 'it is far too long to be one',
  'not-json': () => 'it is cut short or is another kind of file',
  'not-review': () => 'it was not saved from such a page',
  newer: () => 'it was saved by a later Bowbook; open the book’s newest copy',
  tune: at => `what it says of “${at}” makes no sense`,
  day: at => `it says that “${at}” was played on a day that has not come yet`,
};

/** Labels and sentences of the page of what to play today. */
export const reviewWords = {
  title: 'What to play today',
  lead: 'Old tunes come back: after a day, then 3, 7, 14, 30 and 60. Tick whether a tune was there, and it comes back later or sooner.',
  noScript:
    'With scripts allowed, this page says which tunes are due today, splits them into short turns for the minutes that you have, and prints a plan for four weeks. Without, here is every tune by its lesson: take the oldest that you have not played this week.',
  privacy:
    'What you tick stays in this browser on this device. Nothing is sent anywhere; nobody keeps score.',
  /** Where the browser keeps nothing. */
  notKept:
    'This browser keeps nothing for this page, so your ticks last only until you leave it. Save them as a file below.',

  minutes: 'Minutes today',
  today: (day: string) => `Today, ${day}`,
  turnsIntro:
    'Short turns, going round; then each tune whole. First from memory, at a slow tempo; look at the page only when it does not come.',
  part: (name: string) => `part\u00A0${name}`,
  whole: 'the whole tune once',
  /** `minutes` are counted in halves: `2½`. */
  turnLength: (minutes: string, several: boolean) => `${minutes} ${several ? 'minutes' : 'minute'}`,
  rest: 'Put the fiddle down',
  nothingDue: 'Nothing is due today. Play what you like, or nothing.',
  next: (title: string, day: string) => `${title} is next, on ${day}.`,
  allDone: 'That is all for today.',
  waiting: (titles: readonly string[]) =>
    `${count(titles.length, 'more tune')} ${titles.length === 1 ? 'is' : 'are'} due, and will wait: ${titles.join(', ')}.`,

  howItWent: 'How did it go?',
  howItWentIntro: 'Tick each tune when you have played it whole.',
  wasThere: 'It was there',
  hadGone: 'It had gone',
  /** Names of the two buttons for the ear. */
  wasThereOf: (title: string) => `It was there: ${title}`,
  hadGoneOf: (title: string) => `It had gone: ${title}`,
  comesBack: (title: string, day: string, days: number) =>
    `${title} comes back ${days === 1 ? 'tomorrow' : `in ${days} days`}, on ${day}.`,
  undo: 'Take the last tick back',
  undone: (title: string) => `The tick of ${title} is taken back.`,

  weeks: 'The next four weeks',
  weeksIntro:
    'If every tune is there when it comes back. One that has gone comes sooner, so print a new plan now and then.',
  day: 'day',
  tunesColumn: 'tunes',
  week: (n: number) => `Week ${n}`,
  nothing: 'nothing due',
  print: 'Print this plan',

  keep: 'Keep your ticks, or move them',
  keepIntro:
    'A file holds your ticks, to put by or to take to another device. It has the names of tunes and days, and nothing about you.',
  save: 'Save as a file',
  load: 'Take over from a file',
  fileName: 'what-to-play.json',
  loaded: (tunes: number, strangers: number) =>
    `Taken over: ${count(tunes, 'tune')}.${
      strangers === 0
        ? ''
        : ` ${count(strangers, 'tune')} of the file ${strangers === 1 ? 'is' : 'are'} not in this book, and left out.`
    }`,
  notLoaded: (fault: FileFault, at: string) =>
    `This file cannot be taken over: ${faults[fault](at)}. Nothing is changed.`,
  unreadable: 'This file could not be read. Nothing is changed.',
  forget: 'Forget all ticks',
  reallyForget: 'Really forget? Press again',
  forgotten: 'All ticks are forgotten.',

  byLesson: 'Every tune, by lesson',
  noLesson: 'Not yet in a lesson',
  begin: 'Begin with this one',
  /** Its name for the ear; it begins with the words on it. */
  beginOf: (title: string) => `Begin with this one: ${title}`,
  begun: (title: string) => `${title} is begun, and comes back tomorrow.`,

  known: 'What is known about this, and what is not',
  evidence: [
    'Bringing things back after growing gaps of days is well supported for learning words (Cepeda and others, “Distributed practice in verbal recall tasks”, 2006; cited from memory). For tunes on a fiddle it has not been tested. On a short piano task, gaps of up to a quarter of an hour made no difference (Wiseheart and others, “Lack of spacing effects during piano learning”, 2017).',
    'The numbers of days are a habit of teachers. Nobody has tested them.',
    'Going round several pieces in short turns did better than long blocks, where ratings differed, in one study with clarinet players (Carter and Grahn, “Optimizing music learning”, 2016).',
    'Recalling did better than rereading with texts (Roediger and Karpicke, “Test-enhanced learning”, 2006; cited from memory). So: from memory first.',
    'Performers who were followed as they learned remembered the starts of sections best (Chaffin, Imreh and Crawford, “Practicing Perfection”, 2002; cited from memory). So the part that a tune begins with changes from day to day.',
  ],
  cautions:
    'Take five minutes off in every half hour, and add ten minutes a day at most, as BAPAM, the British charity for performers’ health, advises. Never play in pain: stop, loosen thumb and shoulder, and see a doctor or a physiotherapist if it lasts. Ears ringing? Play more quietly, or stop.',
} as const;
