import type { BowPath } from '../../bowing/bow-path.ts';
import type { Anchor, Arrival, Direction, LeadIn, Plan, SlurGroup } from '../../bowing/bowing.ts';
import { compare, type Fraction, fraction, multiply, toNumber } from '../../music/fraction.ts';
import type { NoteNames } from '../../music/note-names.ts';
import { notesByBar } from '../../music/notes-by-bar.ts';
import type { NoteEvent, Tune } from '../../music/tune.ts';
import type { Study } from '../../study.ts';
import { spokenPitches } from './bound.ts';
import { editSentence, repeatSentence } from './bowing.ts';

/** The bowing of a tune told to a class: arrivals, lead-ins, repeats and other ways of a phrase. */

const stroke = (d: Direction): string => (d === 'down' ? 'a down-bow' : 'an up-bow');

/** "First and second time: as written, the bow arrives on an up-bow, as it should." */
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
    const when = alone ? 'As written' : `${timesWords(arrivals.map(a => a.pass))}, as written`;
    const end = agrees ? 'as it should' : 'the wrong way round';
    return { agrees, sentence: `${when}, the bow arrives on ${stroke(direction)}, ${end}.` };
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
  const start = leadIn.start === 'down' ? 'on a down-bow' : 'on an up-bow';
  const arrives = arrivalOf(leadIn);
  const verdict =
    arrives === anchor.direction
      ? `so the bow is ready for ${stroke(arrives)} at the passage, as it should be`
      : `so the bow would begin the passage on ${stroke(arrives)}, and it should be ${stroke(anchor.direction)}`;
  const when = anchor.leadIns.length > 1 ? `${timesWords(leadIn.passes)}: t` : 'T';
  return [
    `${when}he way there starts at ${noteWords(tune, first, names)}, ${start}. ${count(leadIn.notes.length, 'note')} in ${count(leadIn.strokes, 'stroke')}, ${verdict}.`,
    `There ${leadIn.groupings === 1n ? 'is one way' : `are ${big(leadIn.groupings)} ways`} to share these notes out between strokes, and ${big(leadIn.arriving)} of them ${leadIn.arriving === 1n ? 'arrives' : 'arrive'} as asked. Within what this level plays, ${big(leadIn.allowedArriving)} of ${big(leadIn.allowed)}.`,
  ];
}

/** "That makes 44 strokes." */
export const strokeCount = (strokes: number): string => `That makes ${count(strokes, 'stroke')}.`;

/** Why there is no way to show; null where there is one. */
export function noPlanSentence({ arrivals, leadIns }: Anchor): string | null {
  if (leadIns.some(l => l.plans.length > 0)) return null;
  if (arrivals.length === 0) {
    return 'No stroke begins at this passage: its first note is held over from the bar before, or it is never played.';
  }
  if (leadIns.length === 0)
    return 'The passage begins where the strokes do, so there is no way there to plan.';
  if (leadIns.every(l => l.allowedArriving === 0n)) {
    return 'Within what this level plays no way arrives, unless the bow is lifted or longer slurs are allowed.';
  }
  const sameNotes = new Set(leadIns.map(l => l.notes.join(' '))).size < leadIns.length;
  return sameNotes
    ? 'The bow sets out on one stroke one time and on the other stroke another time, so the same slurs cannot bring it here rightly each time.'
    : 'A change on the way would also turn the bow round for the next time through, so no one way serves each time.';
}

/** Which way is drawn: "First time: the first of these ways, in notes". */
export const drawnPlanTitle = (leadIn: LeadIn, several: boolean): string =>
  several
    ? `${timesWords(leadIn.passes)}: the first of these ways, in notes`
    : 'The first of these ways, in notes';

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
      ? 'The bow ends where it began: down-bows and up-bows take the same time.'
      : `The bow drifts ${lengthWords(size)} toward the ${toTip ? 'tip' : 'frog'}: the ${toTip ? 'down' : 'up'}-bows take that much more time than the ${toTip ? 'up' : 'down'}-bows.`;
  const out = path.runsOut === null ? undefined : path.strokes[path.runsOut];
  const place = out?.notes.find(n => compare(n.to, path.bow) > 0 || compare(n.to, fraction(0)) < 0);
  if (!out || !place) return [drifts, `It lasts if it begins ${placeOnBow(path)}.`];
  const end = out.direction === 'down' ? 'tip' : 'frog';
  return [
    drifts,
    `At one speed it runs out at the ${end} by ${noteWords(tune, place.event, names)}, even if it begins ${placeOnBow(path)}: save bow on the ${out.direction}-bows before that.`,
  ];
}

/** "near the frog", "in the middle", of the place to begin. */
function placeOnBow({ start, bow }: BowPath): string {
  const share = toNumber(start) / toNumber(bow);
  if (share < 1 / 8) return 'at the frog';
  if (share < 3 / 8) return 'nearer the frog than the tip';
  if (share <= 5 / 8) return 'in the middle';
  return share <= 7 / 8 ? 'nearer the tip than the frog' : 'at the tip';
}

/** "3 crotchets", "5 quavers"; a length that is neither to the nearest quaver. */
function lengthWords(length: Fraction): string {
  for (const [name, part] of [
    ['crotchet', 4],
    ['quaver', 8],
    ['semiquaver', 16],
  ] as const) {
    const { n, d } = multiply(length, fraction(part));
    if (d === 1) return count(n, name);
  }
  return `about ${count(Math.max(1, Math.round(toNumber(length) * 8)), 'quaver')}`;
}

/** Where notes are played down one time and up another: which, and how the notation flags them. */
export function varyingSentences({ tune, bowing }: Study): readonly string[] {
  const bars = new Map<string, string[]>();
  for (const event of bowing.varying) {
    const [bar = '', number = ''] = noteAt(tune, event)?.id.split(':') ?? [];
    bars.set(bar, [...(bars.get(bar) ?? []), number]);
  }
  if (bars.size === 0) return [];
  const written = notesByBar(tune);
  const whole = (bar: string, found: readonly string[]): boolean =>
    found.length > 2 && found.length === written.get(bar);
  const places = [...bars].map(([bar, found]) =>
    whole(bar, found)
      ? `all of ${barWords(bar)}`
      : `${found.length === 1 ? 'note' : 'notes'} ${listWords(found)} of ${barWords(bar)}`,
  );
  return [
    `A dot over a sign means: not the same stroke every time through. The sign is the first time’s. So it is with ${listWords(places)}.`,
  ];
}

const listWords = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** For each part that is played again: whether it starts on the same stroke, and what mends it. */
export function repeatSentences({ tune, bowing }: Study): readonly string[] {
  return bowing.repeats
    .filter(repeat => repeat.secondPass !== null)
    .map(repeat => {
      const part = `Part ${tune.parts[repeat.part]?.name ?? ''}`;
      const mend = repeat.secondPass === 'reversed' ? repeat.mends[0] : undefined;
      const end = mend ? ` To start both times alike: ${uncapital(editSentence(tune, mend))}` : '';
      return `${part}: ${uncapital(repeatSentence(repeat))}${end}`;
    });
}

/** One of several bowings of a phrase: "slur notes 1 and 2 of A1 (D, E); slur …", "no slurs". */
export const bowingWords = (tune: Tune, slurs: readonly SlurGroup[], names: NoteNames): string =>
  slurs.length === 0
    ? 'no slurs'
    : slurs.map(group => `slur ${groupWords(tune, group, names)}`).join('; ');

/** "notes 2 and 3 of B5 (F sharp, E)"; "note 8 of B5 to note 1 of B6 (D, G)" over a bar line. */
function groupWords(tune: Tune, group: SlurGroup, noteNames: NoteNames): string {
  const notes = group.flatMap(i => noteAt(tune, i) ?? []);
  const [first, last] = [notes[0], notes.at(-1)];
  if (!first || !last) return 'no notes';
  const names = notes.map(note => nameOf(note, noteNames)).join(', ');
  const [bar, from] = first.id.split(':');
  const [lastBar, to] = last.id.split(':');
  const joint = notes.length === 2 ? 'and' : 'to';
  return bar === lastBar
    ? `notes ${from} ${joint} ${to} of ${barWords(bar)} (${names})`
    : `note ${from} of ${barWords(bar)} to note ${to} of ${barWords(lastBar)} (${names})`;
}

/** "note 3 of B5 (F sharp)". */
function noteWords(tune: Tune, event: number, names: NoteNames): string {
  const note = noteAt(tune, event);
  if (!note) return 'the start';
  const [bar, number] = note.id.split(':');
  return `note ${number} of ${barWords(bar)} (${nameOf(note, names)})`;
}

/** "B5"; "the pickup B0" of `B0`. */
const barWords = (bar = ''): string => bar.replace(/^(.*\D)0(?:\/.*)?$/, 'the pickup $&');

function noteAt(tune: Tune, event: number): NoteEvent | null {
  const e = tune.events[event];
  return e?.kind === 'note' ? e : null;
}

const nameOf = (note: NoteEvent, names: NoteNames): string => spokenPitches(note.pitches, names);

/** The stroke that follows the lead-in's last: strokes alternate. */
const arrivalOf = (l: LeadIn): Direction =>
  (l.start === 'down') === (l.strokes % 2 === 0) ? 'down' : 'up';

function timesWords(passes: readonly number[]): string {
  const names = passes.map(p => ordinals[p - 1] ?? `${p}th`);
  const list = names.length < 2 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return capital(`${list ?? ''} time`);
}

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
const count = (n: number, thing: string): string => (n === 1 ? `one ${thing}` : `${n} ${thing}s`);
const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** Thousands in threes, so that long counts can be read; below, nothing need be loaded that knows how. */
const big = (n: bigint): string => (n < 1000n ? String(n) : n.toLocaleString('en-GB'));
