import type { BarSpan, BarsPlayed, DrillPhrases } from '../drill-phrases.ts';
import { bow, counted, ordinal, strokes } from './grammar.ts';

export const drills: DrillPhrases = {
  beads: {
    nth: n => `Note ${n}`,
    leftOut: 'weggelassen',
    slurredOn: 'gebunden',
    bow: { down: 'Abstrich', up: 'Aufstrich' },
  },
  call: {
    question: bars =>
      `Spiel ${bars.from === bars.to ? '' : 'die '}${barsWords(bars)} einmal, oder lass es dir vorspielen. Schau weg, antworte mit deiner Geige aus dem Gedächtnis, dann wähle.`,
    ask: bars => `Welche Auswahl hat die Noten von ${barsDative(bars)}?`,
    choice: n => `Auswahl ${n}`,
    notesOf: bars => `Das sind die Noten von ${barsDative(bars)}.`,
    swapped: (n, next) => `Dort haben Note ${n} und ${next} die Plätze getauscht.`,
    why: (bars, letters) => `${barsWords(bars)}: ${letters}.`,
  },
  gaps: {
    question: (bars, gaps, notes) =>
      `In ${barsDative(bars)} ${gaps === 1 ? 'ist' : 'sind'} ${counted(gaps, 'Note', 'Noten')} von ${notes} weggelassen. Spiel alles mit allen Noten durch, dann trag ein, was fehlt.`,
    why: 'Durchgangsnoten werden zuerst weggelassen und Phrasenanfänge zuletzt, denn das Gedächtnis hält sich an die Anfänge.',
  },
  start: {
    question: (place, phrase, varying) =>
      `Beginn bei ${place}${phrase ? `, wo Phrase ${phrase} beginnt` : ''}${firstTime(varying)}. Setz Finger und Bogen, bevor du antwortest.`,
    asks: {
      note: {
        ask: 'Welche Note?',
        why: note => `Es ist ${note}.`,
        not: 'Dort steht eine andere Note.',
      },
      string: {
        ask: 'Welche Saite?',
        why: string => `Sie liegt auf der ${string}-Saite.`,
        not: 'Auf dieser Saite liegt sie nicht.',
      },
      finger: {
        ask: 'Welcher Finger?',
        why: finger => `Der Finger: ${finger}.`,
        not: 'Dieser Finger gäbe auf ihrer Saite eine andere Note.',
      },
      stroke: {
        ask: 'Welcher Strich?',
        why: ({ stroke, varying }) => `Sie kommt im ${bow(stroke)}${firstTime(varying)}.`,
        not: 'Der Bogen kommt anders herum zu ihr.',
      },
    },
    answer: (note, stroke, varying) => `${note}, im ${bow(stroke)}${firstTime(varying)}.`,
    why: (reached, before, stroke) =>
      before === 0
        ? `Ihr Takt wird im ${bow(reached)} erreicht, und das ist der erste Strich des Takts.`
        : `Ihr Takt wird im ${bow(reached)} erreicht, und ${strokes(before)} später kommt ein ${bow(stroke)}.`,
  },
  count: {
    begins: (bars, starts) => `${barsPlayed(bars)}: Der erste Strich ist ein ${bow(starts)}.`,
    strokes: {
      question: bars => `${barsPlayed(bars)}: Spiel und zähl die Striche, nicht die Noten.`,
      ask: 'Wie viele Striche?',
      answer: n => `${strokes(n)}.`,
      why: (notes, joined) =>
        joined === 0
          ? `Es sind ${notes} Noten ohne Bindebögen, also hat jede ihren eigenen Strich.`
          : `Es sind ${notes} Noten, und ${joined} davon ${joined === 1 ? 'bleibt' : 'bleiben'} im Strich davor; das macht ${notes - joined}.`,
    },
    slurs: {
      question: bars =>
        `${barsPlayed(bars)}, mit der Richtung des Bogens auf jeder Note und ohne Bindebögen.`,
      ask: 'Was davon ist genau ein ganzer Strich?',
      not: 'Diese Noten sind kein ganzer Strich: Schau, wo die Zeichen wechseln.',
      why: notes =>
        `Durch ${notes} geht der Bogen in einer Richtung weiter, davor und danach wechselt er; also sind sie ein Strich.`,
    },
    direction: {
      ask: place => `In welchem Strich ist ${place}?`,
      not: 'Zähl noch einmal: Jeder Strich kehrt den Bogen um, und ein Bindebogen ist ein Strich.',
      answer: stroke => `Im ${bow(stroke)}.`,
      why: (nth, starts) =>
        `Es ist der ${ordinal(nth)} Strich, mit einem ${bow(starts)} gezählt, und Striche wechseln sich ab.`,
    },
    notes: {
      ask: nth => `Welche Noten nimmt der ${ordinal(nth)} Strich?`,
      not: 'Zähl Striche und nicht Noten: Ein Bindebogen ist ein Strich.',
      why: (nth, notes) => `Nach Strichen gezählt ist der ${ordinal(nth)}: ${notes}.`,
    },
    miscounts: {
      notes: 'So viele Noten sind es, und Noten unter einem Bindebogen teilen sich einen Strich.',
      'written-notes':
        'Das zählt eine gehaltene Note noch einmal, und ein Haltebogen braucht nie einen neuen Strich.',
      'notes-less-slurs':
        'Das zieht für jeden Bindebogen eins ab, aber einer über drei Noten spart zwei.',
      'slurs-only':
        'Das zählt nur die Bindebögen, und auch eine einzelne Note braucht einen Strich.',
      'one-more': 'Das ist einer zu viel.',
      'one-less': 'Das ist einer zu wenig.',
      'two-more': 'Das sind zwei zu viel.',
    },
  },
  arrive: {
    question: (place, wanted, pass) =>
      `Die Stelle beginnt bei ${place} im ${bow(wanted)}. So gestrichen käme der Bogen${pass ? ` beim ${ordinal(pass, 'n')} Mal` : ''} im ${bow(wanted === 'down' ? 'up' : 'down')} zu ihr.`,
    broken:
      'An den eigenen Strichen des Stücks wurde eines geändert, damit es verkehrt ankommt; auch andere Änderungen können es richten.',
    asBowed: 'So wird das Stück gestrichen.',
    change: 'Ändere unterwegs eines: ein Bindebogen mehr, einer weniger, einer länger oder kürzer.',
    changeOrLift:
      'Ändere unterwegs eines: ein Bindebogen mehr, einer weniger, einer länger oder kürzer, oder heb den Bogen ab, wo er sich abheben lässt.',
    wayThere: bars => `Der Weg dorthin, aus ${barsDative(bars)}`,
    moreMends: n => `${counted(n, 'andere Änderung ginge', 'andere Änderungen gingen')} auch.`,
    why: 'Ein Strich mehr oder weniger kehrt alle Striche danach um, also kommt der Bogen anders herum an.',
  },
  into: {
    question: (place, wanted) =>
      `Die Stelle beginnt bei ${place} im ${bow(wanted)}. Komm von immer weiter davor in sie hinein, und spiel jeden Weg, bevor du weitergehst.`,
    comesTurned: pass =>
      `So, wie das Stück gestrichen wird, kommt der Bogen${pass ? ` beim ${ordinal(pass, 'n')} Mal` : ''} verkehrt herum hierher; beginn also so, dass er es nicht tut.`,
    ask: (n, place) =>
      `${counted(n, 'Takt', 'Takte')} davor, ab ${place}: In welchem Strich beginnst du?`,
    not: stroke => `Dann käme die Stelle im ${bow(stroke)}.`,
    itemWhy: (n, lifts, stroke) =>
      `${strokes(n)}${lifts > 0 ? ` und ${lifts} Mal Abheben` : ''} später geht der Bogen ${(n + lifts) % 2 === 0 ? 'wieder in der Richtung des Anfangs' : 'in der anderen Richtung'}: ein ${bow(stroke)}.`,
    answer: (bars, start, n) =>
      `${counted(bars, 'Takt', 'Takte')} davor: Beginn im ${bow(start)}, ${strokes(n)} bis zur Stelle.`,
    why: 'Eine gerade Zahl von Strichen bringt den Bogen in die Richtung des Anfangs zurück, eine ungerade kehrt ihn um.',
  },
  same: {
    question: (earlier, later) =>
      `${earlier} und ${later}: Sind sie durchweg gleich, oder bei welcher Note trennen sie sich?`,
    byHeart: 'Spiel beide auswendig, dann zeig auf die Stelle in der zweiten.',
    byNotes: 'Spiel beide, dann zeig auf die Stelle in der zweiten.',
    ask: later => `Die zweite, ${later}`,
    sameThroughout: 'durchweg gleich',
    not: {
      parts: 'Irgendwo trennen sie sich.',
      alike: 'Dort sind sie gleich, und überall sonst auch.',
      'still-alike': 'Dort sind sie noch gleich.',
      parted: 'Sie haben sich schon davor getrennt.',
    },
    answerSame: 'Sie sind durchweg gleich.',
    answerParts: place => `Sie trennen sich bei ${place}.`,
  },
  forks: {
    question: (label, bars, time) =>
      `Du hast gerade Phrase ${label} bei ${bars} gespielt; es ist das ${ordinal(time)} Mal, dass sie im Stück steht. Spiel von dort weiter.`,
    ask: 'Was kommt als Nächstes?',
    choice: (label, opening) => `Phrase ${label}${opening ? `: ${opening} …` : ''}`,
    follows: (label, after) => `Phrase ${label} kommt nach ${after}.`,
    neverFollows: (label, here) => `Phrase ${label} kommt nie nach Phrase ${here}.`,
    answer: (label, bars) => `Phrase ${label}, ${bars}.`,
  },
};

/** „Takt A3“, „Takte A3 bis A6“. */
const barsWords = ({ from, to }: BarSpan): string =>
  from === to ? `Takt ${from}` : `Takte ${from} bis ${to}`;

/** „Takt A3“, „den Takten A3 bis A6“: after „von“, „in“ and „aus“. */
const barsDative = ({ from, to }: BarSpan): string =>
  from === to ? `Takt ${from}` : `den Takten ${from} bis ${to}`;

const barsPlayed = (bars: BarsPlayed): string =>
  `${barsWords(bars)}${bars.pass ? `, beim ${ordinal(bars.pass, 'n')} Mal` : ''}`;

const firstTime = (varying: boolean): string => (varying ? ', beim ersten Mal' : '');
