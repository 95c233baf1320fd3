import type { TuneType } from '../../music/tune.ts';
import type * as english from '../en/site.ts';
import type { InAnyLanguage } from '../in-any-language.ts';

/** The site's own labels. */
export const siteWords: InAnyLanguage<typeof english.siteWords> = {
  skip: 'Zum Inhalt der Seite',
  siteNav: 'Dieses Buch',
  home: 'Anfang',
  lessons: 'Stunden',
  tunes: 'Was wir spielen',
  howToRead: 'So liest man die Zeichen',
  newest: 'Die neueste Stunde',
  readLesson: 'Zur Stunde',
  hearIt: 'Das Stück anhören',
  earlier: 'Frühere Stunden',
  allLessons: 'Alle Stunden',
  allTunes: 'Alles, was wir spielen',
  noLessons: 'Noch gab es keine Stunde. Die erste wird hier stehen.',
  noTunes: 'Noch ist kein Stück aufgeschrieben.',
  about: 'Über uns',
  thisTunesHere: 'Stücke dieser Stunde',
  notation: 'Noten',
  map: 'Wie das Stück gebaut ist',
  anchors: 'Wo wir alle gleich spielen',
  repeats: 'Noch einmal von vorn',
  swaps: 'Andere Striche für eine Phrase',
  swapsHow:
    'Innerhalb einer Liste darf jede Art für jede andere stehen; danach ändert sich nichts. Jede Liste nennt die Striche, die vorkommen, und von denen, die diese Stufe spielt, höchstens die drei besten anderen.',
  keeps: 'Die Striche danach bleiben, wie sie sind',
  flips: 'Alle Striche danach kehren sich um',
  phrase: label => `Phrase ${label}`,
  takeAway: 'Zum Mitnehmen',
  wholeSite:
    'Alle diese Seiten in einer Datei (zip): auspacken und index.html in dem Ordner öffnen',
  downloads: {
    abc: 'Das Stück als ABC, mit allen Strichen und Fingern',
    mid: 'Das Stück zum Hören, mit allen Wiederholungen (MIDI)',
    musicxml: 'Das Stück für Notenprogramme, mit Strichen, Fingern und Saiten (MusicXML)',
    json: 'Alles, was diese Seite weiß, als Daten (JSON)',
  },
  spoken: 'Note für Note, in Worten',
  spokenHow:
    'Jede Zeile ist ein Takt: die Note, ihr Finger und ihre Saite, und der Strich, auf dem sie gespielt wird.',
  story: 'Zu diesem Stück',
  credits: 'Woher es kommt',
  itsLessons: 'Stunden mit diesem Stück',
  tunePage: 'Das ganze Stück',
  print: 'Für Papier kann man diese Seite drucken: Plan, Noten und Herkunft füllen ein Blatt.',
  marks: 'Strichzeichen',
  marksAll: 'jeder Strich',
  marksStarts: 'Phrasenanfänge und wo wir gleich spielen',
  marksAnchors: 'nur wo wir gleich spielen',
  fingers: 'Fingersätze',
  letters: 'Notennamen',
  phraseLetters: 'Buchstaben der Phrasen',
  showWith: 'Bei den Noten zeigen',
  withheld:
    'Die Rechte an diesem Stück sind nicht bekannt, darum stehen seine Noten hier nicht. Sein Plan und seine Herkunft stehen da.',
  unreadable:
    'Die Noten dieses Stücks ließen sich nicht lesen, darum steht hier nur, was dazu erzählt wird.',
  noMap: 'Zu diesem Stück gibt es noch keinen Plan.',
  private: 'Eigene Notizen der Lehrkraft',
  privatePage:
    'Private Fassung: Sie zeigt die eigenen Notizen der Lehrkraft. Bitte nicht veröffentlichen.',
  unfinished: 'unfertig',
  unfinishedPage:
    'Unfertig: Auf dieser Seite steht unfinished: true, darum fehlt sie in dem Buch, das veröffentlicht wird.',
  anchor: 'Alle gleich',
  why: 'Warum',
  begins: notes => (notes.length === 0 ? '' : `Beginnt mit ${notes.join('; ')}.`),
  onString: (fingers, string) => `${fingers.join(' ')} auf ${string}`,
  standsOut: 'Was auffällt',
  plan: 'Wie man hinkommt',
  bestWays: 'Die besten Wege',
  frog: 'Frosch',
  middle: 'Mitte',
  tip: 'Spitze',
  runsOut: 'Bogen zu Ende',
  drift: 'Wandern',
  bowModel:
    'Die Zeit läuft von oben nach unten; mit jedem Punkt beginnt eine Note. Es ist ein Modell: immer dieselbe Geschwindigkeit, und ein ganzer Bogen so lang wie der längste Strich dieser Stufe. Wo der Platz knapp ist, führe den Bogen schneller oder langsamer.',
  everyStroke: 'Jeder Strich auf dem Weg',
  mends: 'Eine Änderung, mit der es stimmt',
  down: 'Abstrich',
  up: 'Aufstrich',
  retake: 'Bogen abheben',
  slurred: 'gebunden',
  opening: 'Beginnt',
  asIfOpening: 'Beginnt, gegriffen wie auf G D A E',
  tuning: 'Saiten',
  tunedTo: strings =>
    `gestimmt ${strings}, von der tiefsten an; Noten und Namen stehen, wie sie klingen. Stimm langsam, das Gesicht abgewandt: Eine Saite kann reißen und peitschen. Im Zweifel lockern und in der Geigenbauwerkstatt fragen`,
  type: 'Art',
  key: 'Tonart',
  metre: 'Taktart',
  form: 'Form',
  title: 'Stück',
  notFound: 'Diese Seite ist nicht im Buch',
  notFoundText:
    'Vielleicht wurde eine Stunde umbenannt, oder ein Buchstabe der Adresse stimmt nicht. Von hier aus ist alles im Buch zu erreichen:',
  madeWith: 'Gemacht mit Bowbook. Nichts auf diesen Seiten fragt irgendwo anders nach.',
  licences: 'Lizenzen der Schriften und Skripte',
  backToTop: 'Nach oben',
  held: 'gehalten',
  footnotes: 'Fußnoten',
  footnoteBack: reference => `Zurück zu Verweis ${reference}`,
  bar: (name, phrase) => (phrase === null ? `Takt ${name}.` : `Phrase ${phrase}, Takt ${name}.`),
  part: name => `Teil ${name}`,
  stave: (phrase, bars) => {
    const named = bars.includes('-') ? `Takte ${bars.replace('-', ' bis ')}` : `Takt ${bars}`;
    return phrase === null ? named : `Phrase ${phrase}, ${named}`;
  },
  timesThrough: n => (n === 1 ? 'einmal' : n === 2 ? 'zweimal' : n === 3 ? 'dreimal' : `${n}-mal`),
  taughtBy: teacher => `mit ${teacher}`,
  reachIt: direction => (direction === 'down' ? 'Komm im Abstrich an.' : 'Komm im Aufstrich an.'),
  arrives: direction =>
    `So geschrieben kommt der Bogen im ${direction === 'down' ? 'Abstrich' : 'Aufstrich'} an, wie er soll.`,
  misses: direction =>
    `So geschrieben kommt der Bogen im ${direction === 'down' ? 'Abstrich' : 'Aufstrich'} an, also verkehrt.`,
  anchorOf: (tune, bars) => `${tune}, ${bars}`,
  planLevel: level => `für die Stufe: ${level}`,
};

export const typeName: Readonly<Record<TuneType, string>> = {
  reel: 'Reel',
  jig: 'Jig',
  'slip jig': 'Slip Jig',
  hornpipe: 'Hornpipe',
  polka: 'Polka',
  slide: 'Slide',
  waltz: 'Walzer',
  strathspey: 'Strathspey',
  march: 'Marsch',
  air: 'langsames Air',
};

/** Left out where a title begins with one and is sorted; those of English too. */
export const articles = 'der die das den dem des ein eine the a an';
