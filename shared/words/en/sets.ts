import type { SetJoin } from '../../sets/set-study.ts';
import type { DurationPhrases } from '../amounts.ts';
import { uncapital } from '../text.ts';
import { aBow, count } from './grammar.ts';

/** What the bow does at a join. */
function bowWords({ last, first, agrees }: SetJoin): string {
  const ends = `It ends on ${aBow(last)}`;
  return agrees
    ? `${ends}, and the next note is ${first}: play straight on.`
    : `${ends}, and the next note is to be ${first} as well.`;
}

/** Where to lift the bow, at a join that does not agree. */
function liftWords({ room, first }: SetJoin): string {
  const again = `start again ${first}`;
  if (room === 'rest') return `There is time in the rest: lift the bow and ${again}.`;
  if (room === 'long-note') return `Cut the last note a little short, lift the bow and ${again}.`;
  return `There is no rest to lift in: a quick lift of the bow, and ${again}.`;
}

/** Labels and sentences of sets. */
export const setWords = {
  title: 'Played together',
  intro:
    'Tunes that we play one after another: how long they take, and what the bow and the hand meet where one gives way to the next.',
  tunes: 'The tunes of this set',
  tune: 'tune',
  timesThrough: 'times',
  slow: 'slow',
  session: 'session',
  total: 'the whole set',
  /** Caption of the table of tunes. */
  lengths: 'How long it takes, in minutes and seconds',
  tempoNote: 'At the slow and the session tempo that this book gives each kind of tune.',
  joins: 'Where they join',
  join: (from: string, to: string) => `${from}, then ${to}`,
  again: (tune: string) => `${tune}, then again from the top`,
  bow: bowWords,
  lift: liftWords,
  /** `edit` is a sentence. */
  orMend: (edit: string) => `Or change the slurs before it: ${uncapital(edit)}`,
  withheld: 'The rights to one of these tunes are not known, so its strokes are not shown here.',
  unreadable: 'One of these tunes could not be read, so this join is not known.',
  inLesson: 'From the lesson',
} as const;

export const durations: DurationPhrases = {
  minutes: n => count(n, 'minute'),
  seconds: n => count(n, 'second'),
};
