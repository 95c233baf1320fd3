import type { Direction } from '../../music/tune.ts';
import type { Problem } from '../../problem.ts';
import type { BowingPhrases, EditPhrases } from '../bowing.ts';
import { spanOf } from '../note-places.ts';
import type { Messages } from '../problem-words.ts';
import { capital } from '../text.ts';
import { count, listed } from './grammar.ts';
import { noteNamed } from './note-name.ts';
import { places } from './places.ts';

export const edits: EditPhrases = {
  slur: notes => `slur ${notes}`,
  drop: notes => `take away the slur over ${notes}`,
  lengthen: (from, to) => `lengthen the slur over ${from}: let it hold ${to}`,
  shorten: (from, to) => `shorten the slur over ${from}: let it hold ${to}`,
  split: (from, to) => `split the slur over ${from}: slur ${to.join(' and ')}`,
  merge: from => `make one slur of ${from.join(' and ')}`,
  retake: ({ note, direction, after, opening }) => {
    const writing = [
      ...(after === null ? [] : [`!breath! before ${after}`]),
      `${signOf(direction)} before ${note}`,
      ...(opening ? [`${signOf(opening.direction)} before ${opening.note}`] : []),
    ];
    return `lift the bow before ${note} and start it again ${direction}: write ${listed(writing)}`;
  },
};

const signOf = (direction: Direction): string => (direction === 'up' ? 'u' : 'v');

export const bowing: BowingPhrases = {
  asWritten: 'It arrives as it is written.',
  arrives: {
    'flips-once': 'which turns the bow round once, so it arrives',
    'two-flips': 'which turns the bow round and back again, so it arrives',
    'many-flips': 'which together leave the bow going the right way, so it arrives',
    keeps: 'which leaves the bow going the same way, so it still arrives',
  },
  besides: {
    'beats-down': 'every strong beat is a down-bow',
    'beats-up': 'every strong beat is an up-bow',
    'into-beats': 'every slur leads into a beat',
    stepwise: 'the slurs go by step on one string',
    'phrases-alike': 'like phrases stay alike',
    'phrases-untied': 'like phrases cannot all stay alike',
    'phrases-untried':
      'like phrases do not all stay alike, since there are too many to try every way',
  },
  plan: ({ changes, arrives, besides }) =>
    `${listed(changes, ', then ')}, ${arrives.join(', ')}${besides.length > 0 ? `; ${listed(besides)}` : ''}.`,
  ownWay: bends =>
    bends.length === 0
      ? 'In the tune’s own way of bowing: it arrives.'
      : `In the tune’s own way of bowing, bent so as to arrive: ${bends.join('; ')}.`,
  singleStrokes: slurs =>
    slurs.length === 0
      ? 'Single strokes throughout: they arrive.'
      : `Single strokes, with a slur over ${listed(slurs)} so as to arrive.`,
  onceThrough: strokes => `Once through takes ${count(strokes, 'stroke')}`,
  eachTime: strokes => `Each time through takes ${count(strokes, 'stroke')}`,
  unlikeTimes: strokes => `The times through take ${listed(strokes.map(String))} strokes`,
  secondTime: {
    same: ', and the second time starts on the same stroke as the first',
    reversed: ', and the second time starts the other way round',
  },
  whole: {
    nothing: 'Nothing need change.',
    solved: edits => `To mend the whole tune at once: ${edits.join('; ')}.`,
    contradiction: demands =>
      `No slurs can meet ${demands.length === 1 ? 'this' : 'these together'}: ${demands.join('; ')}.`,
    'beyond-limits': 'It can be mended at once, but not with slurs as short as this level takes.',
    'too-many': 'There are too many ways to mend the whole tune at once; mend one place at a time.',
    'unlike-passes': 'A tie over a repeat sign makes the passes unlike; mend one place at a time.',
  },
  demands: {
    anchor: (id, pass) => `the anchor "${id}" reached on its stroke, pass ${pass}`,
    sign: (note, pass) => `the sign on ${note}, pass ${pass}`,
    repeat: part => `part ${part} starting the second time as the first`,
    opening: 'the first full bar starting down',
  },
};

/** Problems of the bowing in sentences. */
export const bowingMessages = {
  'stroke-conflict': p => ({
    message:
      `The sign at ${noteNamed(p.facts.note)} asks for ${aBow(p.actual)}, but the bow comes to it ` +
      `${p.expected[0]}, ${count(p.facts.since, 'stroke')} after the last settled one ` +
      `(${passesText(p)}).`,
    mend: mendText(
      p.facts,
      'Take the sign away, or write `!breath!` before it if the bow is to lift there.',
    ),
  }),
  'anchor-not-in-tune': p => ({
    message: `The anchor "${p.facts.anchor}" names ${p.facts.bars}, but this tune has no ${p.actual}: ${barsText(p)}.`,
    mend: p.nearest
      ? `Did you mean ${p.nearest}?`
      : 'Name bars of this tune, such as A5-A6; its page lists them.',
  }),
  'anchor-not-reached': p => ({
    message: `The bow never comes to the anchor "${p.facts.anchor}": its first note, ${noteNamed(p.facts.note)}, is tied on from the note before, or is never played.`,
    mend: 'Begin the anchor on a note that the bow begins.',
  }),
  'anchor-without-stroke': p => ({
    message: `The anchor "${p.facts.anchor}" at ${p.facts.bars} does not say on which stroke it starts.`,
    mend: 'Write `start=down` or `start=up` on it, or a sign, `v` or `u`, on its first note in the tune.',
  }),
  'anchor-against-mark': p => ({
    message:
      p.facts.strokes === 0
        ? `The anchor "${p.facts.anchor}" starts ${p.expected[0]}, but the sign on its first note says ${p.actual}.`
        : `The anchor "${p.facts.anchor}" starts ${p.expected[0]}, but ${count(p.facts.strokes, 'stroke')} ` +
          `on there is a sign, at ${noteNamed(p.facts.sign)}, by which it starts ${p.actual}.`,
    mend:
      p.facts.strokes === 0
        ? 'Make them agree, or take the sign away; until then the sign is followed.'
        : 'Make them agree, take the sign away, or change one slur between them; until then the sign is followed.',
  }),
  'slur-into-anchor': p => ({
    message: `A slur runs into the anchor "${p.facts.anchor}" at ${noteNamed(p.facts.note)}, where a stroke begins.`,
    mend: `End the slur before ${noteNamed(p.facts.note)}, or start the anchor earlier.`,
  }),
  'arrival-missed': p => ({
    message:
      `The bow comes to the anchor "${p.facts.anchor}" (${noteNamed(p.facts.note)}) on ` +
      `${aBow(p.actual)}, but is to start it on ${aBow(p.expected[0] ?? null)} (${passesText(p)}).`,
    mend: mendText(
      p.facts,
      'No single change mends it in every pass; look at the repeats, or at the plans.',
    ),
  }),
} satisfies Partial<Messages>;

/** "its bars run from A1 to B8"; notes, where a bar has not so many. */
function barsText({ expected }: Problem): string {
  const [first, ...more] = expected;
  if (first === undefined) return 'that bar has no notes';
  if (more.length === 0) return `it has only ${first}`;
  return `${first.includes(':') ? 'that bar' : 'it'} runs from ${first} to ${more.at(-1)}`;
}

const aBow = (direction: string | null): string =>
  direction === 'up' ? 'an up-bow' : 'a down-bow';

const passesText = ({
  facts: { passes },
}: Problem<'stroke-conflict' | 'arrival-missed'>): string =>
  passes.includes(',') ? `passes ${passes}` : `pass ${passes}`;

function mendText(
  { mend, abc, mends }: Problem<'stroke-conflict' | 'arrival-missed'>['facts'],
  otherwise: string,
): string {
  if (mend === '') return otherwise;
  const written = abc
    .split('; ')
    .map(bar => bar.replace(/: (.*)$/, ': `$1`'))
    .join(', ');
  return `${editTextSentence(mend)} Write ${written}.${others(mends - 1)}`;
}

const others = (n: number): string =>
  n === 0 ? '' : n === 1 ? ' One other change would do too.' : ` ${n} other changes would do too.`;

/** An edit as text (`slur B5:2-B5:3`, see `editText`) as a sentence. */
function editTextSentence(text: string): string {
  const [kind = '', ...rest] = text.split(' ');
  const [first = '', second = ''] = rest.join(' ').split(/ (?:to|into) /);
  return `${capital(editTextClause(kind, spans(first), spans(second), text))}.`;
}

function editTextClause(
  kind: string,
  from: readonly string[],
  to: readonly string[],
  text: string,
): string {
  const [one = ''] = from;
  switch (kind) {
    case 'slur':
    case 'drop':
      return edits[kind](one);
    case 'lengthen':
    case 'shorten':
      return edits[kind](one, to[0] ?? '');
    case 'split':
      return edits.split(one, to);
    case 'merge':
      return edits.merge(from);
    default:
      return retakeClause(text);
  }
}

/** A lift as `editText` writes it, `retake up at B5:1 after B4:6 from down at A1:1`. */
function retakeClause(text: string): string {
  const found = /^retake (\w+) at (\S+)(?: after (\S+))?(?: from (\w+) at (\S+))?$/.exec(text);
  const [, up, note, after, openingUp, opening] = found ?? [];
  const stroke = (word: string | undefined): Direction => (word === 'up' ? 'up' : 'down');
  return edits.retake({
    note: noteNamed(note),
    direction: stroke(up),
    after: after === undefined ? null : noteNamed(after),
    opening:
      opening === undefined ? null : { note: noteNamed(opening), direction: stroke(openingUp) },
  });
}

/** Spans as `editText` writes them, `B5:2-B5:3 and B6:1-B6:2`, in words. */
const spans = (text: string): readonly string[] =>
  text.split(' and ').map(span => {
    const [, bar = '', note = '', lastBar = '', last = ''] =
      /^(.+?):(\d+)-(.+?):(\d+)$/.exec(span) ?? [];
    return spanOf({ places }, { bar, note }, { bar: lastBar, note: last });
  });
