import type { PaceName } from '../../bowing/paces.ts';
import type { BeatPhrases } from '../beats.ts';
import type * as english from '../en/player.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { counted, decimal } from './grammar.ts';

export const beats: BeatPhrases = {
  named: {
    '1': 'ganze Note',
    '1/2': 'Halbe',
    '1/4': 'Viertel',
    '1/8': 'Achtel',
    '1/16': 'Sechzehntel',
    '3/4': 'punktierte Halbe',
    '3/8': 'punktiertes Viertel',
    '3/16': 'punktiertes Achtel',
  },
  partOfWhole: part => `${part} einer ganzen Note`,
};

const paces: Readonly<Record<PaceName, string>> = {
  learning: 'Lerntempo',
  slow: 'langsam',
  session: 'Sessiontempo',
};

/** What stands on the player and the recordings. */
export const playerWords: InAnyLanguage<typeof english.playerWords> = {
  listen: title => `${title} anhören`,
  play: 'Abspielen',
  stop: 'Anhalten',
  failed:
    'Der Klang ließ sich nicht vorbereiten. Lade die Seite neu, um es noch einmal zu versuchen.',
  slower: 'Langsamer',
  faster: 'Schneller',
  what: 'Was zu hören ist',
  whole: 'Alles',
  part: name => `Teil ${name}`,
  into: bars => `Der Weg nach ${bars}`,
  phrase: (label, bars) => `Phrase ${label}, ${bars}`,
  phrases: (from, to) => `Von ${from} bis ${to}`,
  touch:
    'Tippe in den Noten auf eine Phrase, um sie allein zu hören; tippe auf eine zweite, um von der einen bis zur anderen zu hören.',
  choose: 'Was zu hören ist, wie schnell, und andere Arten zu üben',
  speed: 'Wie schnell',
  paces,
  percent: 'Feiner: Anteil an diesem Tempo',
  tempo: (beat, perMinute, pace, percent) =>
    percent === 100
      ? `${beat} = ${Math.round(perMinute)}, ${paces[pace]}`
      : `${beat} = ${Math.round(perMinute)}, ${percent} % von: ${paces[pace]}`,
  climbing: (beat, perMinute) => `${beat} = ${perMinute}, steigend`,
  loop: 'Schleife',
  more: 'Arten zu üben',
  breath: 'Zwischen einem Mal und dem nächsten',
  breaths: {
    0: 'keine Atempause',
    1: 'eine Atempause von einem Schlag',
    2: 'eine Atempause von zwei Schlägen',
    4: 'eine Atempause von vier Schlägen',
  },
  answer: 'Vorspielen und nachspielen: danach ebenso lange Stille, für deine Antwort',
  countIn: 'Vorzählen',
  pulse: 'Den Schlag mithören',
  pass: 'Welcher Durchgang',
  passes: n =>
    ({ 1: 'erster Durchgang', 2: 'zweiter Durchgang', 3: 'dritter Durchgang' })[n] ??
    `${n}. Durchgang`,
  climb: 'Steigern: mit jeder Runde schneller',
  climbBy: 'Schneller um',
  beatsMore: n => `${counted(n, 'Schlag', 'Schläge')} je Minute`,
  climbEvery: 'Nach je',
  everyTimes: n => counted(n, 'Runde', 'Runden'),
  climbTo: 'Bis',
  lilt: kind =>
    kind === 'pairs' ? 'Schwung der Paare, lang zu kurz' : 'Schwung der Dreiergruppen',
  even: 'gleichmäßig',
  decimal,
  dots: 'Geschriebene Punktierungen auf denselben Schwung abmildern',
  caution:
    'Fang leise an. Mach in jeder halben Stunde fünf Minuten Pause; hör auf, wenn es weh tut oder in den Ohren klingt, und geh in eine Arzt- oder Physiopraxis, wenn es anhält.',
  model:
    'Der Klang entsteht hier aus den Strichen dieser Seite: Er ist ein Modell einer gestrichenen Saite, kein Mensch, der spielt. Abstriche sind heller, Aufstriche weicher.',
  recording: title => `Eine Aufnahme von ${title}`,
  elsewhere:
    'Diese Aufnahme liegt auf einer anderen Website. Der Verweis führt dorthin; diese Seite lädt nichts von dort.',
  clipPhrases: 'Tippe auf eine Phrase, um sie aus der Aufnahme zu hören',
  clipSpeed: 'Geschwindigkeit',
  clipPercent: percent => `${percent} %`,
};
