import type { NoteNames } from '../../music/note-names.ts';
import type { Letter } from '../../music/pitch.ts';
import type { MarksSection } from '../en/how-to-read.ts';
import { spokenPitch } from './spoken.ts';

/** The page that explains the marks. */
export const howToRead = (names: NoteNames): readonly MarksSection[] => [
  {
    id: 'strokes',
    heading: 'Striche des Bogens',
    lead: 'Die Striche wechseln sich ab: ab, auf, ab, auf. Jede Note hat ihren eigenen Strich, wenn kein Bindebogen etwas anderes sagt.',
    marks: [
      { sign: 'down', name: 'Abstrich', text: 'Die Hand geht von der Geige weg.' },
      { sign: 'up', name: 'Aufstrich', text: 'Die Hand kommt zur Geige zurück.' },
      {
        sign: 'slur',
        name: 'Bindebogen',
        text: 'Ein Bogen über zwei oder mehr verschiedenen Noten: Ein Strich nimmt sie alle. Kommt einer dazu oder fällt einer weg, kehren sich alle Striche danach um.',
      },
      {
        sign: null,
        name: 'Den Bogen abheben',
        text: 'Zwei gleiche Striche hintereinander: Heb den Bogen ab und setz ihn in derselben Richtung neu an.',
      },
      {
        sign: null,
        name: 'Ein Punkt über einem Zeichen',
        text: 'Bei einem anderen Durchgang ist diese Note auf dem anderen Strich.',
      },
    ],
  },
  {
    id: 'alike',
    heading: 'Wo wir alle gleich spielen',
    lead: 'Eine getönte Stelle mit einem Rahmen hat feste Noten und feste Striche. Alle spielen sie gleich. Der Rest gehört dir, solange der Bogen richtig herum dort ankommt.',
    marks: [
      {
        sign: null,
        name: 'Wie man hinkommt',
        text: 'Unter der Stelle steht, wie der Bogen ankommt, und die besten Arten, so anzukommen, wie es sein soll.',
      },
      {
        sign: null,
        name: 'Ein Bogen mit einer Linie darunter',
        text: 'Wo auf dem Bogen die Noten liegen. Die Zeit läuft von oben nach unten; die Linie geht im Abstrich nach rechts und im Aufstrich zurück, und mit jedem Punkt beginnt eine Note. Jenseits der senkrechten Linien ist kein Bogen mehr. Es ist ein Modell, keine Messung: Es führt den Bogen immer gleich schnell.',
      },
    ],
  },
  {
    id: 'fingers',
    heading: 'Finger, Saiten und Notennamen',
    lead: 'Zahlen über einer Note sind Finger: 0 ist die leere Saite, 1 der Zeigefinger, 4 der kleine. Saiten heißen nach ihrem leeren Ton.',
    marks: [
      {
        sign: null,
        name: 'Tief und hoch',
        text: `„Tiefer 2 auf ${named('A', names)}“ ist der zweite Finger, zum ersten zurückgezogen; „hoher 3 auf ${named('D', names)}“ der dritte, nach vorn geschoben.`,
      },
      {
        sign: null,
        name: 'Notennamen',
        text: `Unter dem System stehen die Namen der Noten: Ein Komma haben die drei tiefsten, auf der ${named('G', names)}-Saite; groß geschrieben sind die vom ${named('C', names)} darüber bis zum ${named('B', names)} auf der ${named('A', names)}-Saite; klein geht es von dort weiter. Kreuz, Be oder Auflöser steht nur dabei, wo die Tonart es nicht schon sagt.`,
      },
    ],
  },
  {
    id: 'bars',
    heading: 'Namen von Takten und Noten',
    lead: 'Ein Takt heißt nach seinem Teil und seiner Nummer: B7 ist der siebte Takt von Teil B.',
    marks: [
      { sign: null, name: 'Nummer 0', text: 'Der Auftakt: B0 führt zu B1.' },
      {
        sign: null,
        name: 'Eine Zahl nach einem Schrägstrich',
        text: 'Takte einer Klammer (eines Hauses) tragen deren Nummer: A8/2 ist Takt 8 beim zweiten Mal.',
      },
      {
        sign: null,
        name: 'Noten',
        text: 'Noten werden in jedem Takt von 1 an gezählt, Pausen nicht.',
      },
    ],
  },
  {
    id: 'map',
    heading: 'Der Plan eines Stücks',
    lead: 'Jeder Block ist eine Phrase, in der Folge des Stücks. Ein Buchstabe und ein Muster stehen für eine Familie von Phrasen; die Form des Blocks zeigt, wo eine Phrase von der ersten ihrer Familie abweicht. Unter dem Buchstaben stehen ihre ersten drei Noten, dann deren Finger und Saiten.',
    marks: [
      {
        sign: 'own',
        name: 'Die erste ihrer Familie',
        text: 'Ein schlichter Block mit eigenem Buchstaben.',
      },
      {
        sign: 'same',
        name: 'Noch einmal dasselbe',
        text: 'Ein doppelter Rand: Spiel einfach, was du schon kannst.',
      },
      {
        sign: 'ending',
        name: 'Ein eigenes Ende',
        text: 'Der rechte Rand ist rund und gestrichelt: Sie beginnt, wie du sie kennst, und endet anders.',
      },
      {
        sign: 'start',
        name: 'Ein eigener Anfang',
        text: 'Der linke Rand ist rund und gestrichelt: Sie beginnt anders und endet, wie du sie kennst.',
      },
      {
        sign: 'varied',
        name: 'Ein paar Noten sind anders',
        text: 'Gestrichelte Linien oben und unten.',
      },
      {
        sign: null,
        name: 'Eine Kerbe im oberen Rand',
        text: 'Dort steht die erste Note, die anders ist: links früh in der Phrase, rechts spät.',
      },
      {
        sign: 'moved',
        name: 'Versetzt',
        text: 'Der Block steht höher: dieselbe Gestalt, auf anderer Tonhöhe.',
      },
    ],
  },
  {
    id: 'care',
    heading: 'Gib auf dich acht',
    lead: 'Ruh dich in jeder halben Stunde fünf Minuten aus, und verlängere dein Üben um höchstens zehn Minuten am Tag.',
    marks: [
      {
        sign: null,
        name: 'Hände und Schultern',
        text: 'Hör auf, wenn es weh tut; lockere Daumen und Schulter; geh zu Fachleuten, wenn es anhält.',
      },
      { sign: null, name: 'Ohren', text: 'Klingt es in den Ohren? Leiser, oder aufhören.' },
    ],
  },
];

const named = (letter: Letter, names: NoteNames): string =>
  spokenPitch({ letter, alter: 0 }, names);
