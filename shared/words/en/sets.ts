import type { NoteNames } from '../../music/note-names.ts';
import type { Letter } from '../../music/pitch.ts';
import type { KeyChange } from '../../sets/key-change.ts';
import type { SetJoin } from '../../sets/set-study.ts';
import { spokenPitch } from './bound.ts';
import { keyName } from './site.ts';

const listWords = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** Names of up to six semitones. */
const intervals = ['', 'a semitone', 'a tone', 'a minor third', 'a major third', 'a fourth'];

function homeWords(home: number | null): string {
  if (home === null) return '';
  if (home === 0) return 'home stays';
  const size = intervals[Math.abs(home)] ?? 'three tones';
  return `home moves ${home > 0 ? 'up' : 'down'} ${size}`;
}

/** "From G major to D major: C becomes C sharp; home moves down a fourth." */
function keyChangeWords({ from, to, changes, home }: KeyChange, noteNames: NoteNames): string {
  if (changes.length === 0 && home === 0) return `The key stays: ${keyName(to, noteNames)}.`;
  const names = `From ${keyName(from, noteNames)} to ${keyName(to, noteNames)}`;
  const moved = homeWords(home);
  if (changes.length === 0) return `${names}: the same notes${moved && `, and ${moved}`}.`;
  const named = (letter: Letter, alter: number): string =>
    spokenPitch({ letter, alter }, noteNames);
  const letters = changes.map(c => `${named(c.letter, c.from)} becomes ${named(c.letter, c.to)}`);
  return `${names}: ${listWords(letters)}${moved && `; ${moved}`}.`;
}

/** What the bow does at a join. */
function bowWords({ last, first, agrees }: SetJoin): string {
  const ends = `It ends on ${last === 'up' ? 'an up-bow' : 'a down-bow'}`;
  return agrees
    ? `${ends}, and the next note is ${first === 'up' ? 'up' : 'down'}: play straight on.`
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
  orMend: (edit: string) =>
    `Or change the slurs before it: ${edit.charAt(0).toLowerCase()}${edit.slice(1)}`,
  keyChange: keyChangeWords,
  withheld: 'The rights to one of these tunes are not known, so its strokes are not shown here.',
  unreadable: 'One of these tunes could not be read, so this join is not known.',
  inLesson: 'From the lesson',
  /** `3:05`, of seconds. */
  clock(seconds: number): string {
    const whole = Math.round(seconds);
    return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
  },
  /** The same for the ear: `3 minutes 5 seconds`. */
  duration(seconds: number): string {
    const whole = Math.round(seconds);
    const [m, s] = [Math.floor(whole / 60), whole % 60];
    const part = (n: number, name: string) =>
      n === 0 ? [] : [`${n} ${name}${n === 1 ? '' : 's'}`];
    return [...part(m, 'minute'), ...part(s, 'second')].join(' ') || '0 seconds';
  },
} as const;
