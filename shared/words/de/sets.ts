import type { SetJoin } from '../../sets/set-study.ts';
import type { DurationPhrases } from '../amounts.ts';
import type * as english from '../en/sets.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { uncapital } from '../text.ts';
import { bow, counted } from './grammar.ts';

function bowWords({ last, first, agrees }: SetJoin): string {
  const ends = `Es endet im ${bow(last)}`;
  return agrees
    ? `${ends}, und die nächste Note ist ein ${bow(first)}: einfach weiterspielen.`
    : `${ends}, und auch die nächste Note soll ein ${bow(first)} sein.`;
}

function liftWords({ room, first }: SetJoin): string {
  const again = `im ${bow(first)} neu ansetzen`;
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
  orMend: edit => `Oder ändere die Bindebögen davor: ${uncapital(edit)}`,
  withheld:
    'Die Rechte an einem dieser Stücke sind nicht bekannt, darum stehen seine Striche hier nicht.',
  unreadable: 'Eines dieser Stücke ließ sich nicht lesen, darum ist dieser Übergang nicht bekannt.',
  inLesson: 'Aus der Stunde',
};

export const durations: DurationPhrases = {
  minutes: n => counted(n, 'Minute', 'Minuten'),
  seconds: n => counted(n, 'Sekunde', 'Sekunden'),
};
