import type { Anchor, Direction } from '../../bowing/bowing.ts';
import type { SlurFault } from '../../bowing/lead-in-of.ts';
import type { Level } from '../../bowing/settings.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { NoteEvent, Tune } from '../../music/tune.ts';
import type { PastLimit } from '../../trying/past-limits.ts';
import type * as english from '../en/try.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { capital } from '../text.ts';
import { spokenPitches } from './bound.ts';
import { listed, notes as noteCount, ordinal, strokesDative } from './grammar.ts';

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

const stroke = (d: Direction): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');

/** „Der Bogen kommt im Aufstrich an, wie er soll.“ One sentence for all times, or one for each kind. */
export function arrivals(anchor: Anchor): readonly {
  readonly agrees: boolean;
  readonly direction: Direction;
  readonly sentence: string;
}[] {
  const kinds = [...new Set(anchor.arrivals.map(a => a.direction))];
  return kinds.map(direction => {
    const agrees = direction === anchor.direction;
    const passes = anchor.arrivals.filter(a => a.direction === direction).map(a => a.pass);
    const comes =
      kinds.length === 1
        ? 'Der Bogen kommt'
        : `Beim ${listed(passes.map(p => ordinal(p, 'n')))} Mal kommt der Bogen`;
    const end = agrees
      ? 'wie er soll'
      : `also verkehrt herum: es soll ein ${stroke(anchor.direction)} sein`;
    return { agrees, direction, sentence: `${comes} im ${stroke(direction)} an, ${end}.` };
  });
}

/** „47 Noten in 42 Strichen, im Abstrich begonnen.“ */
export const strokesTold = (notes: number, strokes: number, start: Direction): string =>
  `${noteCount(notes)} in ${strokesDative(strokes)}, im ${stroke(start)} begonnen.`;

/** „Gebunden: Fis und E, Note 7 und 8 in B5.“ */
export function junctionTurned(
  tune: Tune,
  places: readonly { readonly before: number; readonly event: number }[],
  slurred: boolean,
  names: NoteNames,
): string {
  const named = places.map(p => junctionPlace(tune, p.before, p.event, names));
  return `${slurred ? 'Gebunden' : 'Getrennt'}: ${apart(named)}.`;
}

/** Name of a link between two notes, whatever its state. */
export const junctionName = (tune: Tune, before: number, event: number, names: NoteNames): string =>
  `Bindung von ${junctionPlace(tune, before, event, names)}`;

function junctionPlace(tune: Tune, before: number, event: number, names: NoteNames): string {
  const [a, b] = [noteAt(tune, before), noteAt(tune, event)];
  if (!a || !b) return '';
  return `${nameOf(a, names)} zu ${nameOf(b, names)}, ${placeOf(a, b)}`;
}

/** „Fis, hoher 2 auf D, Abstrich, 2. von 3 in diesem Strich, Note 7 in B5“. */
export function noteTold(
  note: NoteEvent,
  where: string,
  direction: Direction,
  at: number,
  of: number,
  names: NoteNames,
): string {
  const place = of === 1 ? '' : `, ${at}. von ${of} in diesem Strich`;
  return `${nameOf(note, names)}, ${where}, ${stroke(direction)}${place}, ${placeOf(note)}`;
}

/** Runs of notes on the way whose stroke an edit turned. */
export function turnedTold(
  tune: Tune,
  runs: readonly (readonly [number, number])[],
  last: number,
  names: NoteNames,
): string {
  if (runs.length === 0) return 'Kein Strich auf dem Weg kehrt sich um.';
  const told = runs.map(([from, to]) => {
    const start = noteAt(tune, from);
    const end = noteAt(tune, to);
    if (!start || !end) return '';
    const begins = `${placeOf(start)} (${nameOf(start, names)})`;
    if (to === last) return `ab ${begins}`;
    return from === to ? begins : `von ${begins} bis ${placeOf(end)} (${nameOf(end, names)})`;
  });
  return `Umgekehrt: ${apart(told)}.`;
}

/** What goes past the limits of a level. `seconds`: its longest stroke. */
export function pastLimitTold(tune: Tune, limit: PastLimit, level: Level, seconds: number): string {
  const [first, last] = [noteAt(tune, limit.events[0]), noteAt(tune, limit.events.at(-1))];
  if (!first || !last) return '';
  const where = placeOf(first, last);
  switch (limit.kind) {
    case 'many-notes':
      return `${where}: ${limit.events.length} Noten in einem Strich, mehr als die ${limit.most}, die hier vorgesehen sind (${levels[level]}).`;
    case 'long-stroke':
      return `${where}: Der Strich dauert im langsamen Übetempo mehr als ${seconds.toLocaleString('de')} Sekunden.`;
    case 'slur-over':
      return `${where}: ${faults[limit.fault]}.`;
  }
}

const faults: Readonly<Record<SlurFault, string>> = {
  repeated: 'zweimal dieselbe Note; gebunden ist die zweite nicht zu hören',
  treble: 'der Bindebogen führt in ein Treble hinein oder heraus, das eigene Striche braucht',
  leap: 'ihre Saiten sind keine Nachbarn, der Bogen müsste also eine dazwischen überspringen',
  gap: 'der Bindebogen geht über eine Pause oder ein Atemzeichen',
  signed: 'ein Zeichen verlangt bei der zweiten einen neuen Strich',
  'phrase-end':
    'der Bindebogen geht über das Ende einer Phrase, das diese Art zu streichen frei lässt',
};

/** „Note 2 und 3 in B5“, „Note 8 in B5 bis Note 1 in B6“, „Note 3 in B5“. */
function placeOf(first: NoteEvent, last: NoteEvent = first): string {
  const [bar = '', from = ''] = first.id.split(':');
  const [lastBar = '', to = ''] = last.id.split(':');
  if (first === last) return `Note ${from} in ${bar}`;
  if (bar !== lastBar) return `Note ${from} in ${bar} bis Note ${to} in ${lastBar}`;
  return `Note ${from} ${Number(to) - Number(from) === 1 ? 'und' : 'bis'} ${to} in ${bar}`;
}

function noteAt(tune: Tune, event = -1): NoteEvent | null {
  const e = tune.events[event];
  return e?.kind === 'note' ? e : null;
}

const nameOf = (note: NoteEvent, names: NoteNames): string => spokenPitches(note.pitches, names);
const apart = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join('; ')} und ${items.at(-1)}`;
