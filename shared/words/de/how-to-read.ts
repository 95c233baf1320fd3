import type { HowToReadPhrases } from '../how-to-read.ts';

export const marks: HowToReadPhrases = {
  strokes: {
    heading: 'Striche des Bogens',
    lead: 'Die Striche wechseln sich ab: ab, auf, ab, auf. Jede Note hat ihren eigenen Strich, wenn kein Bindebogen etwas anderes sagt.',
    marks: {
      down: ['Abstrich', 'Die Hand geht von der Geige weg.'],
      up: ['Aufstrich', 'Die Hand kommt zur Geige zurück.'],
      slur: [
        'Bindebogen',
        'Ein Bogen über zwei oder mehr verschiedenen Noten: Ein Strich nimmt sie alle. Kommt einer dazu oder fällt einer weg, kehren sich alle Striche danach um.',
      ],
      lift: [
        'Den Bogen abheben',
        'Zwei gleiche Striche hintereinander: Heb den Bogen ab und setz ihn in derselben Richtung neu an.',
      ],
      dot: [
        'Ein Punkt über einem Zeichen',
        'Bei einem anderen Durchgang ist diese Note auf dem anderen Strich.',
      ],
    },
  },
  alike: {
    heading: 'Wo wir alle gleich spielen',
    lead: 'Bei einer getönten Stelle mit Rahmen sind Noten und Striche in der Klasse abgesprochen. Sonst streichst du, wie du magst; nur musst du mit dem Strich einsetzen, den ihr erstes Zeichen zeigt.',
    marks: {
      gettingThere: [
        'Wie man hinkommt',
        'Unter der Stelle steht, wie der Bogen ankommt, und die besten Arten, so anzukommen, wie es sein soll.',
      ],
      bowDiagram: [
        'Ein Bogen mit einer Linie darunter',
        'Wo auf dem Bogen die Noten liegen. Die Zeit läuft von oben nach unten; die Linie geht im Abstrich nach rechts und im Aufstrich zurück, und mit jedem Punkt beginnt eine Note. Jenseits der senkrechten Linien ist kein Bogen mehr. Es ist ein Modell, keine Messung: Es führt den Bogen immer gleich schnell.',
      ],
    },
  },
  fingers: {
    heading: 'Finger, Saiten und Notennamen',
    lead: 'Zahlen über einer Note sind Finger: 0 ist die leere Saite, 1 der Zeigefinger, 4 der kleine. Saiten heißen nach ihrem leeren Ton.',
    marks: {
      lowAndHigh: [
        'Tief und hoch',
        note =>
          `„Tiefer 2 auf ${note.A}“ ist der zweite Finger, zum ersten zurückgezogen; „hoher 3 auf ${note.D}“ der dritte, nach vorn geschoben.`,
      ],
      letters: [
        'Notennamen',
        note =>
          `Unter dem System stehen die Namen der Noten: Ein Komma haben die drei tiefsten, auf der ${note.G}-Saite; groß geschrieben sind die vom ${note.C} darüber bis zum ${note.B} auf der ${note.A}-Saite; klein geht es von dort weiter. Kreuz, Be oder Auflöser steht nur dabei, wo die Tonart es nicht schon sagt.`,
      ],
    },
  },
  bars: {
    heading: 'Namen von Takten und Noten',
    lead: 'Ein Takt heißt nach seinem Teil und seiner Nummer: B7 ist der siebte Takt von Teil B.',
    marks: {
      pickup: ['Nummer 0', 'Der Auftakt: B0 führt zu B1.'],
      ending: [
        'Eine Zahl nach einem Schrägstrich',
        'Takte einer Klammer (eines Hauses) tragen deren Nummer: A8/2 ist Takt 8 beim zweiten Mal.',
      ],
      notes: ['Noten', 'Noten werden in jedem Takt von 1 an gezählt, Pausen nicht.'],
    },
  },
  map: {
    heading: 'Der Plan eines Stücks',
    lead: 'Jedes Feld ist eine Phrase, in der Folge des Stücks. Ein Buchstabe und ein Muster stehen für eine Familie von Phrasen; die Form des Feldes zeigt, wo eine Phrase von der ersten ihrer Familie abweicht. Unter dem Buchstaben stehen ihre ersten drei Noten, dann deren Finger und Saiten.',
    marks: {
      own: ['Die erste ihrer Familie', 'Ein schlichtes Feld mit eigenem Buchstaben.'],
      same: ['Noch einmal dasselbe', 'Ein doppelter Rand: Spiel einfach, was du schon kannst.'],
      ending: [
        'Ein eigenes Ende',
        'Der rechte Rand ist rund und gestrichelt: Sie beginnt, wie du sie kennst, und endet anders.',
      ],
      start: [
        'Ein eigener Anfang',
        'Der linke Rand ist rund und gestrichelt: Sie beginnt anders und endet, wie du sie kennst.',
      ],
      varied: ['Ein paar Noten sind anders', 'Gestrichelte Linien oben und unten.'],
      notch: [
        'Eine Kerbe im oberen Rand',
        'Dort steht die erste Note, die anders ist: links früh in der Phrase, rechts spät.',
      ],
      moved: ['Versetzt', 'Das Feld steht höher: dieselbe Gestalt, auf anderer Tonhöhe.'],
    },
  },
  care: {
    heading: 'Gib auf dich acht',
    lead: 'Ruh dich in jeder halben Stunde fünf Minuten aus, und verlängere dein Üben um höchstens zehn Minuten am Tag; so rät es BAPAM, die britische Vereinigung für Bühnenmedizin.',
    marks: {
      hands: [
        'Hände und Schultern',
        'Hör auf, wenn es weh tut; lockere Daumen und Schulter; geh in eine Arzt- oder Physiopraxis, wenn es anhält.',
      ],
      ears: ['Ohren', 'Klingt es in den Ohren? Leiser, oder aufhören.'],
    },
  },
};
