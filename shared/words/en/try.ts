import type { Anchor, Direction } from '../../bowing/bowing.ts';
import type { SlurFault } from '../../bowing/lead-in-of.ts';
import type { Level } from '../../bowing/settings.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { NoteEvent, Tune } from '../../music/tune.ts';
import type { PastLimit } from '../../trying/past-limits.ts';
import { spokenPitches } from './bound.ts';

/** What stands where a student tries strokes of their own on the way to a passage. */
export const tryWords = {
  open: 'Try your own strokes',
  needsScript: 'Here you could try strokes of your own, but this browser runs no scripts.',
  nothingFree:
    'Nothing before this passage is free to change: the strokes begin with it, or are all set.',
  how: 'Between two notes hangs a link. Touch an open one and the two notes share a stroke; touch a closed one and they part. Touch a note to hear the way from there.',
  keys: 'With the keyboard: arrow keys go along the notes and links, Space or Enter turns a link.',
  chain: 'The notes on the way, each with its finger and string',
  passage: 'All alike',
  fits: 'it fits',
  misses: 'wrong way',
  pass: 'Which time',
  passName: (pass: number): string => timeName(pass),
  level: 'Limits for the',
  levels: { beginner: 'beginner', improver: 'improver', advanced: 'advanced' } satisfies Record<
    Level,
    string
  >,
  together: 'Change phrases that are the same together',
  undo: 'Undo',
  redo: 'Redo',
  another: 'Show me another way',
  restart: 'Start again as written',
  hear: 'Hear it',
  hush: 'Stop',
  caution: 'Begin quietly. Ears ringing? Quieter, or stop.',
  share: 'Share',
  print: 'Print',
  linkLabel: 'This bowing as a link',
  linkHow: 'Whoever has this page can open it and finds these slurs.',
  copy: 'Copy the link',
  copied: 'Copied.',
  inNotes: 'In notation',
  turned: 'turned round by the last change',
  limitsTitle: 'Beyond what this level plays',
  limitsHow: 'These limits are starting points. Your teacher may set others.',
  wayTo: (bars: string): string => `The way to ${bars}.`,
  sheetTitle: (tune: string): string => `${tune}: my strokes`,
  restarted: 'Back to the slurs as the teacher wrote them.',
  undone: 'Undone.',
  redone: 'Done again.',
  levelSet: (level: Level): string => `Limits for the ${level}.`,
  noOther: 'There is no other way to show.',
  way: (n: number, of: number, sentence: string): string => `Way ${n} of ${of}: ${sentence}`,
  opened: 'These are the slurs from the link.',
} as const;

const aBow = (d: Direction): string => (d === 'down' ? 'a down-bow' : 'an up-bow');

/** "The bow arrives on an up-bow, as it should." One sentence for all times, or one for each kind. */
export function arrivals(anchor: Anchor): readonly {
  readonly agrees: boolean;
  readonly direction: Direction;
  readonly sentence: string;
}[] {
  const kinds = [...new Set(anchor.arrivals.map(a => a.direction))];
  return kinds.map(direction => {
    const agrees = direction === anchor.direction;
    const passes = anchor.arrivals.filter(a => a.direction === direction).map(a => a.pass);
    const when = kinds.length === 1 ? 'The' : `${timesName(passes)} the`;
    const end = agrees
      ? 'as it should'
      : `the wrong way round: it should be ${aBow(anchor.direction)}`;
    return { agrees, direction, sentence: `${when} bow arrives on ${aBow(direction)}, ${end}.` };
  });
}

/** "47 notes in 42 strokes, starting on a down-bow." */
export const strokesTold = (notes: number, strokes: number, start: Direction): string =>
  `${count(notes, 'note')} in ${count(strokes, 'stroke')}, starting on ${aBow(start)}.`;

/** "Slurred: F sharp to E, notes 7 and 8 of B5." Several: one for each place. */
export function junctionTurned(
  tune: Tune,
  places: readonly { readonly before: number; readonly event: number }[],
  slurred: boolean,
  names: NoteNames,
): string {
  const named = places.map(p => junctionPlace(tune, p.before, p.event, names));
  return `${slurred ? 'Slurred' : 'Parted'}: ${listed(named)}.`;
}

/** Name of a link between two notes, whatever its state. */
export const junctionName = (tune: Tune, before: number, event: number, names: NoteNames): string =>
  `Slur ${junctionPlace(tune, before, event, names)}`;

function junctionPlace(tune: Tune, before: number, event: number, names: NoteNames): string {
  const [a, b] = [noteAt(tune, before), noteAt(tune, event)];
  if (!a || !b) return '';
  return `${nameOf(a, names)} to ${nameOf(b, names)}, ${placeOf(a, b)}`;
}

/** "F sharp, high 2 on D, down-bow, the second of three in its stroke, note 7 of B5". */
export function noteTold(
  note: NoteEvent,
  where: string,
  direction: Direction,
  at: number,
  of: number,
  names: NoteNames,
): string {
  const stroke = `${direction}-bow${of === 1 ? '' : `, ${ordinal(at)} of ${of} in its stroke`}`;
  return `${nameOf(note, names)}, ${where}, ${stroke}, ${placeOf(note)}`;
}

/** Runs of notes on the way whose stroke an edit turned; each run by its first and last event. */
export function turnedTold(
  tune: Tune,
  runs: readonly (readonly [number, number])[],
  last: number,
  names: NoteNames,
): string {
  if (runs.length === 0) return 'No stroke on the way turns round.';
  const told = runs.map(([from, to]) => {
    const start = noteAt(tune, from);
    const end = noteAt(tune, to);
    if (!start || !end) return '';
    if (to === last) return `from ${placeOf(start)} (${nameOf(start, names)}) on`;
    return from === to
      ? `${placeOf(start)} (${nameOf(start, names)})`
      : `from ${placeOf(start)} (${nameOf(start, names)}) to ${placeOf(end)} (${nameOf(end, names)})`;
  });
  return `Turned round: ${listed(told)}.`;
}

/** What goes past the limits of a level, in a sentence. `seconds`: its longest stroke. */
export function pastLimitTold(tune: Tune, limit: PastLimit, level: Level, seconds: number): string {
  const [first, last] = [noteAt(tune, limit.events[0]), noteAt(tune, limit.events.at(-1))];
  if (!first || !last) return '';
  const where = capital(placeOf(first, last));
  switch (limit.kind) {
    case 'many-notes':
      return `${where}: ${limit.events.length} notes in one stroke, more than the ${limit.most} to plan for here (${level}).`;
    case 'long-stroke':
      return `${where}: the stroke lasts more than ${seconds} seconds at the slow practice tempo.`;
    case 'slur-over':
      return `${where}: ${faults[limit.fault]}.`;
  }
}

const faults: Readonly<Record<SlurFault, string>> = {
  repeated: 'the same note twice; slurred, the second is not heard',
  treble: 'the slur runs into or out of a treble, which wants strokes of its own',
  leap: 'their strings are not neighbours, so the bow must pass over one between',
  gap: 'the slur runs over a rest or a breath',
  signed: 'a sign asks for a new stroke at the second',
  'phrase-end': 'the slur runs over the end of a phrase, which this way of bowing leaves free',
};

/** "notes 2 and 3 of B5", "note 8 of B5 to note 1 of B6", "note 3 of B5". */
function placeOf(first: NoteEvent, last: NoteEvent = first): string {
  const [bar = '', from = ''] = first.id.split(':');
  const [lastBar = '', to = ''] = last.id.split(':');
  if (first === last) return `note ${from} of ${bar}`;
  if (bar !== lastBar) return `note ${from} of ${bar} to note ${to} of ${lastBar}`;
  return `notes ${from} ${Number(to) - Number(from) === 1 ? 'and' : 'to'} ${to} of ${bar}`;
}

function noteAt(tune: Tune, event = -1): NoteEvent | null {
  const e = tune.events[event];
  return e?.kind === 'note' ? e : null;
}

const nameOf = (note: NoteEvent, names: NoteNames): string => spokenPitches(note.pitches, names);

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];
const ordinal = (n: number): string => ordinals[n - 1] ?? `number ${n}`;
const timeName = (pass: number): string => `${capital(ordinal(pass))} time`;
const timesName = (passes: readonly number[]): string =>
  `${capital(listed(passes.map(ordinal)))} time`;
const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join('; ')} and ${items.at(-1)}`;
const count = (n: number, thing: string): string => (n === 1 ? `one ${thing}` : `${n} ${thing}s`);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
