import type { Level } from '../../bowing/settings.ts';
import type { DrillKind } from '../../drills/drill.ts';
import type { MendVerdict } from '../../drills/judge-mend.ts';
import type * as english from '../en/drills.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import type { NoDrillPhrases } from '../tell-drill.ts';
import { capital } from '../text.ts';

const levelNames: Readonly<Record<Level, string>> = {
  beginner: 'Für den Anfang:',
  improver: 'Für die Mittelstufe:',
  advanced: 'Für Fortgeschrittene:',
};

/** Labels of drills. */
export const drillWords: InAnyLanguage<typeof english.drillWords> = {
  practise: 'Üben',
  practiseHow:
    'Erst spielen, dann antworten. Nichts wird gezählt und nichts behalten. Ruh dich aus, bevor du müde wirst; hör auf, wenn es weh tut, und geh in eine Arzt- oder Physiopraxis, wenn es anhält.',
  answer: 'Antwort und Begründung',
  answers: 'Antworten auf die Fragen',
  answerTo: (title, tune) => `${title}: ${tune}`,
  check: 'Prüfen',
  clear: 'Wie es war',
  another: 'Noch eine',
  harder: 'Schwerer',
  easier: 'Leichter',
  listen: 'Anhören',
  stop: 'Anhalten',
  right: 'Ja.',
  wrong: 'Das ist es nicht.',
  rightMark: 'richtig',
  wrongMark: 'das nicht',
  levelIs: level => levelNames[level],
  choose: 'wählen',
  gapsLeft: (right, all) =>
    right === all
      ? 'Ja, alle stimmen.'
      : `${right} von ${all} stimmen; sieh dir die anderen noch einmal an.`,
  blank: 'weggelassen',
  join: (from, to) => `Zwischen ${from} und ${to}`,
  joins: { change: 'Wechsel', slur: 'gebunden', lift: 'abheben' },
  anchor: 'die Stelle',
  notLoaded: 'Das Stück wurde nicht geladen, darum lässt sich nur die Frage auf der Seite stellen.',
  onlyOne: 'Dieses Stück hat auf dieser Stufe keine andere Frage dieser Art.',
  noLevel: 'Dieses Stück hat auf jener Stufe keine Frage dieser Art.',
};

export const drillTitles: Readonly<Record<DrillKind, string>> = {
  call: 'Vorspielen und nachspielen',
  gaps: 'Weggelassene Noten',
  count: 'Striche zählen',
  arrive: 'Die Ankunft richten',
  start: 'Irgendwo beginnen',
  same: 'Gleich oder verschieden',
  forks: 'Wohin jetzt',
  into: 'In die Stelle hinein',
};

export const levelSays: Readonly<Record<DrillKind, Readonly<Record<Level, string>>>> = {
  call: {
    beginner: 'ein Takt; zur Wahl stehen andere Takte des Stücks.',
    improver: 'zwei Takte; einige der anderen unterscheiden sich nur in zwei Noten.',
    advanced:
      'vier oder acht Takte, an beliebiger Stelle; die anderen unterscheiden sich nur in zwei Noten.',
  },
  gaps: {
    beginner: 'jede zehnte Note einer Phrase fehlt.',
    improver: 'jede vierte Note einer Phrase fehlt.',
    advanced: 'die Hälfte oder drei Viertel der Noten von zwei Phrasen fehlen.',
  },
  count: {
    beginner: 'ein Takt: wie viele Striche, oder in welche Richtung einer geht.',
    improver: 'zwei Takte: wie viele Striche, welche Richtung, und welche Noten gebunden sind.',
    advanced: 'vier Takte, und welche Noten ein Strich nimmt.',
  },
  arrive: {
    beginner: 'die letzten zwei Takte vor der Stelle, mit kurzen Bindebögen.',
    improver: 'die letzten vier Takte vor der Stelle.',
    advanced: 'die letzten acht Takte vor der Stelle, mit längeren Bindebögen.',
  },
  start: {
    beginner: 'am Anfang einer Phrase.',
    improver: 'am Anfang eines beliebigen Takts.',
    advanced: 'auf einer beliebigen Note.',
  },
  same: {
    beginner: 'Phrasen, die sich früh trennen oder gar nicht, mit ihren Noten.',
    improver: 'zwei beliebige verwandte Phrasen, mit ihren Noten.',
    advanced: 'Phrasen, die sich spät trennen, auswendig: Nur die Plätze der Noten sind zu sehen.',
  },
  forks: {
    beginner: 'nur die Wege, die auf diese Phrase folgen, mit ihrem Anfang.',
    improver: 'eine Phrase mehr, als auf sie folgen, mit ihrem Anfang.',
    advanced: 'aus allen Phrasen, nur dem Namen nach.',
  },
  into: {
    beginner: 'von einem Takt davor, dann von zweien.',
    improver: 'von einem Takt davor, dann von zweien, dann von vieren.',
    advanced: 'von einem Takt davor, dann von zweien, vieren und achten.',
  },
};

/** What comes of a change tried on a wrong arrival. */
export const mendVerdicts: Readonly<Record<MendVerdict, string>> = {
  mends: 'Ja, er kommt richtig an: jedes Mal, und sonst kehrt sich nichts um.',
  misses: 'Er kommt immer noch verkehrt an, mindestens bei einem Mal.',
  harms: 'Hier kommt er richtig an, aber dafür kehrt sich der Bogen um, wo er vorher stimmte.',
  beyond:
    'Er käme an, aber dieser Bindebogen ist länger, als diese Stufe spielt, oder verbindet Noten, die sich keinen Strich teilen können.',
  several: 'Das ist mehr als eine Änderung. Eine genügt.',
  nothing: 'Noch ist nichts geändert.',
};

export const noDrill: NoDrillPhrases = {
  sentence: why => `Dieses Stück gibt keine solche Übung her: ${capital(why)}.`,
  why: {
    'no-notes': 'es hat keine Noten',
    'no-anchor': 'es hat keine Stelle, die alle gleich spielen',
    'anchor-not-reached': 'an seiner Stelle beginnt kein Strich',
    'no-way-there': 'kein voller Takt führt zu seiner Stelle',
    'no-mend':
      'auf dem Weg zu seiner Stelle findet sich keine einzelne Änderung, die sie in Ordnung bringt',
    'no-fork': 'keine seiner Phrasen geht auf zwei Arten weiter',
    'no-kin': 'keine zwei seiner Phrasen sind sich ähnlich genug zum Vergleichen',
    'all-anchor':
      'seine Stelle nimmt es ganz ein, und aus einer Stelle wird keine Note weggelassen',
    'too-plain': 'es hat zu wenige verschiedene Noten, um danach zu fragen',
  },
};
