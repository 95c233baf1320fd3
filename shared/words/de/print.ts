import type * as english from '../en/print.ts';
import type { InAnyLanguage } from '../in-any-language.ts';

const steps = ['Alles', 'Phrasenanfänge', 'Der Plan', 'Die ersten Noten', 'Der Titel'];

/** The words of what is printed: sheets, the tune book, the pocket booklet. */
export const printWords: InAnyLanguage<typeof english.printWords> = {
  contents: 'Inhalt',
  howToRead: 'So liest man die Zeichen',
  page: 'Seite',
  pageAfter: page => `, Seite ${page}`,
  tunes: 'Stücke',
  moreTunes: 'Weitere Stücke',
  moreTunesLead: 'Stücke der Klasse, die noch keine Stunde aufgenommen hat.',
  tunesOfLesson: 'In dieser Stunde',
  sets: 'Zusammen gespielt',
  setsLead: 'Stücke hintereinander, mit der Zahl der Durchgänge.',
  drills: 'Übungen',
  answers: 'Antworten zu den Übungen',
  drillsLead:
    'Erst spielen, dann antworten. Die Antworten stehen hinten, damit du sie nicht zu früh siehst.',
  drillNamed: (n, kind, tune) => `Übung ${n}. ${kind}: ${tune}`,
  titles: 'Verzeichnis der Titel',
  openings: 'Verzeichnis der Anfänge',
  openingsLead: 'Die ersten Takte aller Stücke, nach Titeln geordnet.',
  withheld: 'Hier nicht gedruckt',
  withheldLead:
    'Noch ist nicht bekannt, wem diese Stücke gehören, darum sind ihre Noten nicht gedruckt. Frag deine Lehrkraft.',
  withheldMark: 'nicht gedruckt: Rechte noch nicht bekannt',
  noTunes: 'Noch gibt es hier kein Stück, das gedruckt werden darf.',
  unreadable:
    'Die Noten dieses Stücks ließen sich nicht zeichnen, darum steht hier nur, woher es kommt.',
  alike: 'Wo wir alle gleich spielen',
  alikeAt: (bars, stroke) =>
    `${bars}: im ${stroke === 'down' ? 'Abstrich' : 'Aufstrich'} ankommen.`,
  mapOf: told => `Plan des Stücks. ${told}`,
  phraseTold: (label, bars, kin) => `${label}, ${bars}: ${kin}`,
  alsoCalled: aliases => `Heißt auch ${aliases}`,
  otherName: (alias, title) => `${alias}, siehe ${title}`,
  writtenBy: teacher => `mit ${teacher}`,
  step: n => steps[n - 1] ?? '',
  stepOf: (title, n) => `${title}: ${steps[n - 1] ?? ''}`,
  stepLead: n =>
    [
      '',
      'Was fehlt, kannst du auswendig. Spiel es, und sing vorher, wo du nicht sicher bist.',
      'Spiel das Stück nach seinem Plan. Wo du stecken bleibst, schau auf das Blatt davor.',
      'Drei Noten für den Anfang. Der Rest ist in deinem Ohr und in deinen Händen.',
      'Nur sein Name. Summ den Anfang, such den ersten Finger, und los.',
    ][n - 1] ?? '',
  fadedRow: bars =>
    `${bars}: nur die ersten Noten jeder Phrase und die Noten, die alle gleich spielen; sonst leere Linien.`,
  firstNotesRow: notes => `Die ersten Noten: ${notes}.`,
  openingRow: notes => `Es beginnt: ${notes}.`,
  waysTo: tune => `Wege zu der Stelle in ${tune}`,
  recording: words => `Aufnahme: ${words} (auf den Seiten dieses Buchs).`,
  care: 'In jeder halben Stunde fünf Minuten Pause. Hör auf, wenn es weh tut; geh in eine Arzt- oder Physiopraxis, wenn es anhält.',
  pocketTitle: book => `${book}: erste Takte`,
  pocketHow:
    'So entsteht dieses Heft: beidseitig in voller Größe drucken, über die lange Kante gewendet. Jeden Bogen quer durch die Mitte schneiden, die untere Hälfte in die obere legen und jeden Bogen in den vorigen, falten und im Falz heften.',
  sheetsTitle: book => `${book}: Blätter`,
  download: {
    book: 'Das Notenbuch (PDF)',
    sheets: 'Alle Stücke in Großdruck (PDF)',
    pocket: 'Die ersten Takte aller Stücke, zum Falten als Taschenheft (PDF)',
    tune: 'Blätter zum Drucken, von allem bis zum bloßen Titel (PDF)',
  },
  forPaper: 'Auf Papier',
};
