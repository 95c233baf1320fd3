import type { FileFault } from '../../review/review-file.ts';
import type * as english from '../en/review.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { counted } from './grammar.ts';

const faults: Readonly<Record<FileFault, (at: string) => string>> = {
  'too-long': () => 'Sie ist viel zu lang dafür',
  'not-json': () => 'Sie ist abgeschnitten oder von anderer Art',
  'not-review': () => 'Sie wurde nicht auf einer solchen Seite gesichert',
  newer: () =>
    'Sie wurde mit einem späteren Bowbook gesichert; öffne die neueste Fassung des Buchs',
  tune: at => `Was sie über „${at}“ sagt, ergibt keinen Sinn`,
  day: at => `Sie sagt, „${at}“ sei an einem Tag gespielt worden, der noch nicht da ist`,
};

/** Labels and sentences of the page of what to play today. */
export const reviewWords: InAnyLanguage<typeof english.reviewWords> = {
  title: 'Was heute zu spielen ist',
  lead: 'Alte Stücke kommen wieder: nach einem Tag, dann nach 3, 7, 14, 30 und 60. Hak ab, ob ein Stück noch da war, und es kommt später oder früher wieder.',
  noScript:
    'Mit Skripten sagt diese Seite, welche Stücke heute fällig sind, teilt sie für die Minuten, die du hast, in kurze Runden ein und druckt einen Plan für vier Wochen. Ohne Skripte steht hier jedes Stück bei seiner Stunde: Nimm das älteste, das du diese Woche noch nicht gespielt hast.',
  privacy:
    'Was du abhakst, bleibt in diesem Browser auf diesem Gerät. Nichts wird irgendwohin gesendet; niemand zählt mit.',
  notKept:
    'Dieser Browser behält für diese Seite nichts, deine Häkchen halten also nur, bis du sie verlässt. Sichere sie unten als Datei.',
  minutes: 'Minuten heute',
  today: day => `Heute, ${day}`,
  turnsIntro:
    'Kurze Runden, reihum; dann jedes Stück ganz. Zuerst auswendig, in langsamem Tempo; schau erst auf die Seite, wenn es nicht kommt.',
  part: name => `Teil\u00A0${name}`,
  whole: 'das ganze Stück einmal',
  turnLength: (minutes, several) => `${minutes} ${several ? 'Minuten' : 'Minute'}`,
  rest: 'Leg die Geige weg',
  nothingDue: 'Heute ist nichts fällig. Spiel, was du magst, oder nichts.',
  next: (title, day) => `Als Nächstes kommt ${title}, am ${day}.`,
  allDone: 'Das ist alles für heute.',
  waiting: titles =>
    `${counted(titles.length, 'weiteres Stück ist', 'weitere Stücke sind')} fällig und ${titles.length === 1 ? 'wartet' : 'warten'}: ${titles.join(', ')}.`,
  howItWent: 'Wie ging es?',
  howItWentIntro: 'Hak jedes Stück ab, wenn du es ganz gespielt hast.',
  wasThere: 'Es war da',
  hadGone: 'Es war weg',
  wasThereOf: title => `Es war da: ${title}`,
  hadGoneOf: title => `Es war weg: ${title}`,
  comesBack: (title, day, days) =>
    `${title} kommt ${days === 1 ? 'morgen' : `in ${days} Tagen`} wieder, am ${day}.`,
  undo: 'Das letzte Häkchen zurücknehmen',
  undone: title => `Das Häkchen bei ${title} ist zurückgenommen.`,
  weeks: 'Die nächsten vier Wochen',
  weeksIntro:
    'Wenn jedes Stück noch da ist, sobald es wiederkommt. Eines, das weg ist, kommt früher; druck also ab und zu einen neuen Plan.',
  day: 'Tag',
  tunesColumn: 'Stücke',
  week: n => `Woche ${n}`,
  nothing: 'nichts fällig',
  print: 'Diesen Plan drucken',
  keep: 'Deine Häkchen behalten oder mitnehmen',
  keepIntro:
    'Eine Datei hält deine Häkchen fest, zum Aufheben oder für ein anderes Gerät. In ihr stehen die Namen von Stücken und Tage, und nichts über dich.',
  save: 'Als Datei sichern',
  load: 'Aus einer Datei übernehmen',
  fileName: 'was-zu-spielen-ist.json',
  loaded: (tunes, strangers) =>
    `Übernommen: ${counted(tunes, 'Stück', 'Stücke')}.${
      strangers === 0
        ? ''
        : ` ${counted(strangers, 'Stück der Datei ist', 'Stücke der Datei sind')} nicht in diesem Buch und ${strangers === 1 ? 'wird' : 'werden'} weggelassen.`
    }`,
  notLoaded: (fault, at) =>
    `Diese Datei lässt sich nicht übernehmen. ${faults[fault](at)}. Nichts ist geändert.`,
  unreadable: 'Diese Datei ließ sich nicht lesen. Nichts ist geändert.',
  forget: 'Alle Häkchen vergessen',
  reallyForget: 'Wirklich vergessen? Noch einmal drücken',
  forgotten: 'Alle Häkchen sind vergessen.',
  byLesson: 'Alle Stücke, nach Stunden',
  noLesson: 'Noch in keiner Stunde',
  begin: 'Mit diesem beginnen',
  beginOf: title => `Mit diesem beginnen: ${title}`,
  begun: title => `${title} ist begonnen und kommt morgen wieder.`,
  known: 'Was darüber bekannt ist, und was nicht',
  evidence: [
    'Dinge in wachsenden Abständen von Tagen wiederzuholen ist für das Lernen von Wörtern gut belegt (Cepeda und andere, „Distributed practice in verbal recall tasks“, 2006; aus dem Gedächtnis angeführt). Für Stücke auf der Geige ist es nicht geprüft. Bei einer kurzen Aufgabe am Klavier machten Abstände bis zu einer Viertelstunde keinen Unterschied (Wiseheart und andere, „Lack of spacing effects during piano learning“, 2017).',
    'Die Zahlen der Tage sind eine Gewohnheit von Lehrenden. Niemand hat sie geprüft.',
    'Reihum in kurzen Runden an mehreren Stücken zu üben war in einer Studie mit Klarinette besser als lange Blöcke, wo sich die Bewertungen unterschieden (Carter und Grahn, „Optimizing music learning“, 2016).',
    'Bei Texten war Erinnern besser als Wiederlesen (Roediger und Karpicke, „Test-enhanced learning“, 2006; aus dem Gedächtnis angeführt). Darum: zuerst auswendig.',
    'Musikerinnen und Musiker, die man beim Lernen begleitete, erinnerten sich am besten an die Anfänge von Abschnitten (Chaffin, Imreh und Crawford, „Practicing Perfection“, 2002; aus dem Gedächtnis angeführt). Darum wechselt von Tag zu Tag, mit welchem Teil ein Stück beginnt.',
  ],
  cautions:
    'Mach in jeder halben Stunde fünf Minuten Pause, und leg höchstens zehn Minuten am Tag zu; so rät es BAPAM, die britische Vereinigung für Bühnenmedizin. Spiel nie unter Schmerzen: Hör auf, lockere Daumen und Schulter, und geh in eine Arzt- oder Physiopraxis, wenn es anhält. Klingt es in den Ohren? Spiel leiser, oder hör auf.',
};
