import type { Level } from '../../bowing/settings.ts';
import type * as english from '../en/try.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { capital, joined } from '../text.ts';
import type { TryPhrases } from '../try.ts';
import { bow, listed, notes as noteCount, ordinal, strokesDative } from './grammar.ts';

const levels: Readonly<Record<Level, string>> = {
  beginner: 'Anfang',
  improver: 'Mittelstufe',
  advanced: 'Fortgeschritten',
};

/** What stands where a student tries strokes of their own on the way to a passage. */
export const tryWords: InAnyLanguage<typeof english.tryWords> = {
  open: 'Eigene Striche ausprobieren',
  needsScript:
    'Hier könntest du eigene Striche ausprobieren, aber dieser Browser führt keine Skripte aus.',
  nothingFree:
    'Vor dieser Stelle ist nichts frei: Die Striche beginnen mit ihr, oder sie sind alle festgelegt.',
  how: 'Zwischen zwei Noten hängt ein Glied. Tippe auf ein offenes, und die beiden Noten teilen sich einen Strich; tippe auf ein geschlossenes, und sie trennen sich. Tippe auf eine Note, um den Weg von dort an zu hören.',
  keys: 'Mit der Tastatur: Pfeiltasten gehen die Noten und Glieder entlang, Leertaste oder Eingabetaste schaltet ein Glied um.',
  chain: 'Die Noten auf dem Weg, jede mit Finger und Saite',
  passage: 'Alle gleich',
  fits: 'passt',
  misses: 'verkehrt',
  pass: 'Welches Mal',
  passName: pass => `${capital(ordinal(pass, 's'))} Mal`,
  level: 'Grenzen für die Stufe',
  levels,
  together: 'Gleiche Phrasen gemeinsam ändern',
  undo: 'Rückgängig',
  redo: 'Wiederholen',
  another: 'Einen anderen Weg zeigen',
  restart: 'Neu beginnen, wie es dasteht',
  hear: 'Anhören',
  hush: 'Anhalten',
  caution: 'Fang leise an. Klingt es in den Ohren? Leiser, oder aufhören.',
  share: 'Teilen',
  print: 'Drucken',
  linkLabel: 'Diese Striche als Verweis',
  linkHow: 'Wer diese Seite hat, kann ihn öffnen und findet diese Bindebögen vor.',
  copy: 'Den Verweis kopieren',
  copied: 'Kopiert.',
  inNotes: 'In Noten',
  turned: 'durch die letzte Änderung umgekehrt',
  limitsTitle: 'Mehr, als diese Stufe spielt',
  limitsHow: 'Diese Grenzen sind ein Ausgangspunkt. Deine Lehrkraft kann andere setzen.',
  wayTo: bars => `Der Weg nach ${bars}.`,
  sheetTitle: tune => `${tune}: meine Striche`,
  restarted: 'Wieder die Bindebögen, wie die Lehrkraft sie schrieb.',
  undone: 'Rückgängig gemacht.',
  redone: 'Wiederholt.',
  levelSet: level => `Grenzen für die Stufe: ${levels[level]}.`,
  noOther: 'Es gibt keinen anderen Weg zu zeigen.',
  way: (n, of, sentence) => `Weg ${n} von ${of}: ${sentence}`,
  opened: 'Das sind die Bindebögen aus dem Verweis.',
};

export const trying: TryPhrases = {
  arrival: (stroke, wanted, passes) => {
    const comes = passes
      ? `Beim ${listed(passes.map(p => ordinal(p, 'n')))} Mal kommt der Bogen`
      : 'Der Bogen kommt';
    const end =
      stroke === wanted ? 'wie er soll' : `also verkehrt herum: es soll ein ${bow(wanted)} sein`;
    return `${comes} im ${bow(stroke)} an, ${end}.`;
  },
  strokes: (notes, strokes, start) =>
    `${noteCount(notes)} in ${strokesDative(strokes)}, im ${bow(start)} begonnen.`,
  pair: (first, second, place) => `${first} zu ${second}, ${place}`,
  turned: (pairs, slurred) =>
    `${slurred ? 'Gebunden' : 'Getrennt'}: ${joined(pairs, ' und ', '; ')}.`,
  link: pair => `Bindung von ${pair}`,
  stroke: (direction, nth, of) =>
    `${bow(direction)}${of === 1 ? '' : `, ${nth}. von ${of} in diesem Strich`}`,
  noneTurnRound: 'Kein Strich auf dem Weg kehrt sich um.',
  turnRound: runs => `Umgekehrt: ${joined(runs, ' und ', '; ')}.`,
  from: note => `ab ${note}`,
  fromTo: (first, last) => `von ${first} bis ${last}`,
  manyNotes: (notes, most, level) =>
    `${notes} Noten in einem Strich, mehr als die ${most}, die hier vorgesehen sind (${levels[level]})`,
  longStroke: seconds =>
    `Der Strich dauert im langsamen Übetempo mehr als ${`${seconds}`.replace('.', ',')} Sekunden`,
  slurOver: {
    repeated: 'zweimal dieselbe Note; gebunden ist die zweite nicht zu hören',
    treble: 'der Bindebogen führt in ein Treble hinein oder heraus, das eigene Striche braucht',
    leap: 'ihre Saiten sind keine Nachbarn, der Bogen müsste also eine dazwischen überspringen',
    gap: 'der Bindebogen geht über eine Pause oder ein Atemzeichen',
    signed: 'ein Zeichen verlangt bei der zweiten einen neuen Strich',
    'phrase-end':
      'der Bindebogen geht über das Ende einer Phrase, das diese Art zu streichen frei lässt',
  },
};
