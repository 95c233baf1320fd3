import type { NoteNames } from '../../music/note-names.ts';
import type { Letter } from '../../music/pitch.ts';
import type { KeyChange } from '../../sets/key-change.ts';
import type { SetJoin } from '../../sets/set-study.ts';
import type * as english from '../en/sets.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { spokenPitch } from './bound.ts';
import { counted, listed } from './grammar.ts';
import { keyName } from './site.ts';

/** Names of up to five semitones. */
const intervals = [
  '',
  'einen Halbton',
  'einen Ganzton',
  'eine kleine Terz',
  'eine große Terz',
  'eine Quarte',
];

function homeWords(home: number | null): string {
  if (home === null) return '';
  if (home === 0) return 'der Grundton bleibt';
  const size = intervals[Math.abs(home)] ?? 'drei Ganztöne';
  return `der Grundton geht ${size} ${home > 0 ? 'hinauf' : 'hinunter'}`;
}

/** „Von G-Dur nach D-Dur: C wird Cis; der Grundton geht eine Quarte hinunter.“ */
function keyChangeWords({ from, to, changes, home }: KeyChange, noteNames: NoteNames): string {
  if (changes.length === 0 && home === 0) return `Die Tonart bleibt: ${keyName(to, noteNames)}.`;
  const names = `Von ${keyName(from, noteNames)} nach ${keyName(to, noteNames)}`;
  const moved = homeWords(home);
  if (changes.length === 0) return `${names}: dieselben Töne${moved && `, und ${moved}`}.`;
  const named = (letter: Letter, alter: number): string =>
    spokenPitch({ letter, alter }, noteNames);
  const letters = changes.map(c => `${named(c.letter, c.from)} wird ${named(c.letter, c.to)}`);
  return `${names}: ${listed(letters)}${moved && `; ${moved}`}.`;
}

const stroke = (d: 'down' | 'up'): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');

function bowWords({ last, first, agrees }: SetJoin): string {
  const ends = `Es endet im ${stroke(last)}`;
  return agrees
    ? `${ends}, und die nächste Note ist ein ${stroke(first)}: einfach weiterspielen.`
    : `${ends}, und auch die nächste Note soll ein ${stroke(first)} sein.`;
}

function liftWords({ room, first }: SetJoin): string {
  const again = `im ${stroke(first)} neu ansetzen`;
  if (room === 'rest') return `In der Pause ist Zeit: den Bogen abheben und ${again}.`;
  if (room === 'long-note')
    return `Die letzte Note ein wenig kürzen, den Bogen abheben und ${again}.`;
  return `Zum Abheben gibt es keine Pause: den Bogen rasch abheben und ${again}.`;
}

/** Labels and sentences of sets. */
export const setWords: InAnyLanguage<typeof english.setWords> = {
  title: 'Zusammen gespielt',
  intro:
    'Stücke, die wir hintereinander spielen: wie lange sie dauern, und was Bogen und Hand erwartet, wo eines ins nächste übergeht.',
  tunes: 'Die Stücke dieser Folge',
  tune: 'Stück',
  timesThrough: 'Durchgänge',
  slow: 'langsam',
  session: 'Session',
  total: 'die ganze Folge',
  lengths: 'Wie lange es dauert, in Minuten und Sekunden',
  tempoNote:
    'Im langsamen Tempo und im Sessiontempo, die dieses Buch für jede Art von Stück angibt.',
  joins: 'Wo sie sich treffen',
  join: (from, to) => `${from}, dann ${to}`,
  again: tune => `${tune}, dann noch einmal von vorn`,
  bow: bowWords,
  lift: liftWords,
  orMend: edit =>
    `Oder ändere die Bindebögen davor: ${edit.charAt(0).toLowerCase()}${edit.slice(1)}`,
  keyChange: keyChangeWords,
  withheld:
    'Die Rechte an einem dieser Stücke sind nicht bekannt, darum stehen seine Striche hier nicht.',
  unreadable: 'Eines dieser Stücke ließ sich nicht lesen, darum ist dieser Übergang nicht bekannt.',
  inLesson: 'Aus der Stunde',
  clock: seconds => {
    const whole = Math.round(seconds);
    return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
  },
  duration: seconds => {
    const whole = Math.round(seconds);
    const [m, s] = [Math.floor(whole / 60), whole % 60];
    const parts = [
      ...(m === 0 ? [] : [counted(m, 'Minute', 'Minuten')]),
      ...(s === 0 ? [] : [counted(s, 'Sekunde', 'Sekunden')]),
    ];
    return parts.join(' ') || '0 Sekunden';
  },
};
