import type { BowPath } from '../../bowing/bow-path.ts';
import type { Anchor, Arrival, Direction, LeadIn, Plan, SlurGroup } from '../../bowing/bowing.ts';
import { compare, type Fraction, fraction, multiply, toNumber } from '../../music/fraction.ts';
import type { NoteNames } from '../../music/note-names.ts';
import { notesByBar } from '../../music/notes-by-bar.ts';
import type { NoteEvent, Tune } from '../../music/tune.ts';
import type { Study } from '../../study.ts';
import { spokenPitches } from './bound.ts';
import { editSentence, repeatSentence } from './bowing.ts';
import {
  capital,
  counted,
  listed,
  notes as noteCount,
  number,
  ordinal,
  strokes,
  strokesDative,
} from './counted.ts';

/** The bowing of a tune told to a class. */

const stroke = (d: Direction): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');

/** „Beim ersten und zweiten Mal, so geschrieben, kommt der Bogen im Aufstrich an, wie er soll.“ */
export function arrivalSentences(
  anchor: Anchor,
): readonly { readonly agrees: boolean; readonly sentence: string }[] {
  const seen = new Map<Direction, Arrival[]>();
  for (const arrival of anchor.arrivals) {
    seen.set(arrival.direction, [...(seen.get(arrival.direction) ?? []), arrival]);
  }
  const alone = seen.size === 1;
  return [...seen].map(([direction, arrivals]) => {
    const agrees = direction === anchor.direction;
    const when = alone ? 'So geschrieben' : `${timesWords(arrivals.map(a => a.pass))}`;
    const end = agrees ? 'wie er soll' : 'also verkehrt herum';
    return { agrees, sentence: `${when} kommt der Bogen im ${stroke(direction)} an, ${end}.` };
  });
}

/** Where the lead-in starts, its strokes, and how many ways there are: exact counts. */
export function leadInSentences(
  study: Study,
  anchor: Anchor,
  leadIn: LeadIn,
  names: NoteNames,
): readonly string[] {
  const { tune } = study;
  const [first, last] = [leadIn.notes[0], leadIn.notes.at(-1)];
  if (first === undefined || last === undefined) return [];
  const arrives = arrivalOf(leadIn);
  const verdict =
    arrives === anchor.direction
      ? `damit ist der Bogen an der Stelle bereit für einen ${stroke(arrives)}, wie er soll`
      : `damit würde der Bogen die Stelle im ${stroke(arrives)} beginnen, und es soll ein ${stroke(anchor.direction)} sein`;
  const when = anchor.leadIns.length > 1 ? `${timesWords(leadIn.passes)}: ` : '';
  const { groupings, arriving, allowed, allowedArriving } = leadIn;
  const ways = groupings === 1n ? 'Es gibt eine einzige Art' : `Es gibt ${number(groupings)} Arten`;
  const arrive = arriving === 1n ? 'eine davon kommt' : `${number(arriving)} davon kommen`;
  return [
    `${when}Der Weg dorthin beginnt bei ${noteWords(tune, first, names)}, im ${stroke(leadIn.start)}. ${noteCount(leadIn.notes.length)} in ${strokesDative(leadIn.strokes)}, ${verdict}.`,
    `${ways}, diese Noten auf Striche zu verteilen, und ${arrive} an wie verlangt. Im Rahmen dessen, was diese Stufe spielt, sind es ${number(allowedArriving)} von ${number(allowed)}.`,
  ];
}

/** „Das sind 44 Striche.“ */
export const strokeCount = (n: number): string => `Das ${n === 1 ? 'ist' : 'sind'} ${strokes(n)}.`;

/** Why there is no way to show; null where there is one. */
export function noPlanSentence({ arrivals, leadIns }: Anchor): string | null {
  if (leadIns.some(l => l.plans.length > 0)) return null;
  if (arrivals.length === 0) {
    return 'An dieser Stelle beginnt kein Strich: Ihre erste Note ist aus dem Takt davor herübergehalten, oder sie wird nie gespielt.';
  }
  if (leadIns.length === 0)
    return 'Die Stelle beginnt dort, wo die Striche beginnen; es gibt also keinen Weg zu planen.';
  if (leadIns.every(l => l.allowedArriving === 0n)) {
    return 'Im Rahmen dessen, was diese Stufe spielt, kommt keine Art richtig an, es sei denn, der Bogen wird abgehoben oder längere Bindebögen sind erlaubt.';
  }
  const sameNotes = new Set(leadIns.map(l => l.notes.join(' '))).size < leadIns.length;
  return sameNotes
    ? 'Der Bogen bricht einmal auf dem einen und einmal auf dem anderen Strich auf; dieselben Bindebögen können ihn also nicht jedes Mal richtig herbringen.'
    : 'Eine Änderung unterwegs würde den Bogen auch für den nächsten Durchgang umkehren; es gibt also keine Art, die jedes Mal taugt.';
}

/** Which way is drawn. */
export const drawnPlanTitle = (leadIn: LeadIn, several: boolean): string =>
  several
    ? `${timesWords(leadIn.passes)}: der erste dieser Wege, in Noten`
    : 'Der erste dieser Wege, in Noten';

/** How the bow drifts, where to begin, and where it runs out. */
export function bowPathSentences(
  tune: Tune,
  path: BowPath,
  { drift }: Pick<Plan, 'drift'>,
  names: NoteNames,
): readonly string[] {
  const toTip = drift.n > 0;
  const size = fraction(Math.abs(drift.n), drift.d);
  const drifts =
    drift.n === 0
      ? 'Der Bogen endet, wo er begonnen hat: Abstriche und Aufstriche dauern gleich lang.'
      : `Der Bogen wandert um ${lengthWords(size)} ${toTip ? 'zur Spitze' : 'zum Frosch'}: So viel länger dauern die ${toTip ? 'Abstriche' : 'Aufstriche'} als die ${toTip ? 'Aufstriche' : 'Abstriche'}.`;
  const out = path.runsOut === null ? undefined : path.strokes[path.runsOut];
  const place = out?.notes.find(n => compare(n.to, path.bow) > 0 || compare(n.to, fraction(0)) < 0);
  if (!out || !place) return [drifts, `Er reicht, wenn er ${placeOnBow(path)} beginnt.`];
  const end = out.direction === 'down' ? 'an der Spitze' : 'am Frosch';
  return [
    drifts,
    `Bei gleicher Geschwindigkeit ist er ${end} bei ${noteWords(tune, place.event, names)} zu Ende, selbst wenn er ${placeOnBow(path)} beginnt: Spare bei den ${stroke(out.direction)}en davor Bogen.`,
  ];
}

/** „nahe am Frosch“, „in der Mitte“. */
function placeOnBow({ start, bow }: BowPath): string {
  const share = toNumber(start) / toNumber(bow);
  if (share < 1 / 8) return 'am Frosch';
  if (share < 3 / 8) return 'näher am Frosch als an der Spitze';
  if (share <= 5 / 8) return 'in der Mitte';
  return share <= 7 / 8 ? 'näher an der Spitze als am Frosch' : 'an der Spitze';
}

/** „3 Viertel“, „5 Achtel“; a length that is neither to the nearest quaver. */
function lengthWords(length: Fraction): string {
  for (const [name, part] of [
    ['Viertel', 4],
    ['Achtel', 8],
    ['Sechzehntel', 16],
  ] as const) {
    const { n, d } = multiply(length, fraction(part));
    if (d === 1) return counted(n, name, name);
  }
  return `etwa ${counted(Math.max(1, Math.round(toNumber(length) * 8)), 'Achtel', 'Achtel')}`;
}

/** Where notes are played down one time and up another. */
export function varyingSentences({ tune, bowing }: Study): readonly string[] {
  const bars = new Map<string, string[]>();
  for (const event of bowing.varying) {
    const [bar = '', n = ''] = noteAt(tune, event)?.id.split(':') ?? [];
    bars.set(bar, [...(bars.get(bar) ?? []), n]);
  }
  if (bars.size === 0) return [];
  const written = notesByBar(tune);
  const whole = (bar: string, found: readonly string[]): boolean =>
    found.length > 2 && found.length === written.get(bar);
  const places = [...bars].map(([bar, found]) =>
    whole(bar, found)
      ? `alle Noten ${inBar(bar)}`
      : `${found.length === 1 ? 'Note' : 'die Noten'} ${listed(found)} ${inBar(bar)}`,
  );
  return [
    `Ein Punkt über einem Zeichen heißt: nicht jedes Mal derselbe Strich. Das Zeichen gilt für das erste Mal. Das betrifft ${listed(places)}.`,
  ];
}

/** For each part that is played again: whether it starts on the same stroke, and what mends it. */
export function repeatSentences({ tune, bowing }: Study): readonly string[] {
  return bowing.repeats
    .filter(repeat => repeat.secondPass !== null)
    .map(repeat => {
      const part = `Teil ${tune.parts[repeat.part]?.name ?? ''}`;
      const mend = repeat.secondPass === 'reversed' ? repeat.mends[0] : undefined;
      const end = mend ? ` Damit beide gleich beginnen: ${editSentence(tune, mend)}` : '';
      return `${part}: ${repeatSentence(repeat)}${end}`;
    });
}

/** „Note 1 und 2 in A1 gebunden (D, E)“, „ohne Bindebögen“. */
export const bowingWords = (tune: Tune, slurs: readonly SlurGroup[], names: NoteNames): string =>
  slurs.length === 0
    ? 'ohne Bindebögen'
    : `gebunden: ${slurs.map(group => groupWords(tune, group, names)).join('; ')}`;

/** „Note 2 und 3 in B5 (Fis, E)“; over a bar line „Note 8 in B5 bis Note 1 in B6 (D, G)“. */
function groupWords(tune: Tune, group: SlurGroup, names: NoteNames): string {
  const notes = group.flatMap(i => noteAt(tune, i) ?? []);
  const [first, last] = [notes[0], notes.at(-1)];
  if (!first || !last) return 'keine Noten';
  const named = notes.map(note => spokenPitches(note.pitches, names)).join(', ');
  const [bar, from] = first.id.split(':');
  const [lastBar, to] = last.id.split(':');
  const joint = notes.length === 2 ? 'und' : 'bis';
  return bar === lastBar
    ? `Note ${from} ${joint} ${to} ${inBar(bar)} (${named})`
    : `Note ${from} ${inBar(bar)} bis Note ${to} ${inBar(lastBar)} (${named})`;
}

/** „Note 3 in B5 (Fis)“. */
function noteWords(tune: Tune, event: number, names: NoteNames): string {
  const note = noteAt(tune, event);
  if (!note) return 'dem Anfang';
  const [bar, n] = note.id.split(':');
  return `Note ${n} ${inBar(bar)} (${spokenPitches(note.pitches, names)})`;
}

/** „in B5“; „im Auftakt B0“. */
const inBar = (bar = ''): string =>
  /^.*\D0(?:\/.*)?$/.test(bar) ? `im Auftakt ${bar}` : `in ${bar}`;

function noteAt(tune: Tune, event: number): NoteEvent | null {
  const e = tune.events[event];
  return e?.kind === 'note' ? e : null;
}

/** The stroke that follows the lead-in's last: strokes alternate. */
const arrivalOf = (l: LeadIn): Direction =>
  (l.start === 'down') === (l.strokes % 2 === 0) ? 'down' : 'up';

/** „Beim ersten und zweiten Mal“. */
const timesWords = (passes: readonly number[]): string =>
  capital(`beim ${listed(passes.map(p => ordinal(p, 'n')))} Mal`);
