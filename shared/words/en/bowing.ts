import type {
  Demand,
  Edit,
  Plan,
  Reason,
  RepeatStudy,
  SlurGroup,
  WholeTune,
} from '../../bowing/bowing.ts';
import type { Tune } from '../../music/tune.ts';
import type { Problem } from '../../problem.ts';
import { noteNamed } from './note-name.ts';

/** Problems of the bowing in sentences. */
export const bowingMessages: Record<string, (p: Problem) => { message: string; mend: string }> = {
  'stroke-conflict': p => ({
    message:
      `The sign at ${noteNamed(p.facts.note)} asks for ${aBow(p.actual)}, but the bow comes to it ` +
      `${p.expected[0]}, ${strokes(Number(p.facts.since))} after the last settled one ` +
      `(${passesText(p)}).`,
    mend: mendText(
      p,
      'Take the sign away, or write `!breath!` before it if the bow is to lift there.',
    ),
  }),
  'anchor-not-in-tune': p => ({
    message: `The anchor "${p.facts.anchor}" names ${p.facts.bars}, but this tune has no ${p.actual}: ${barsText(p)}.`,
    mend: p.nearest
      ? `Did you mean ${p.nearest}?`
      : 'Name bars of this tune, such as B7-B8; its page lists them.',
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
      `The anchor "${p.facts.anchor}" starts ${p.expected[0]}, but the sign on its first note ` +
      `says ${p.actual}.`,
    mend: 'Make them agree, or take the sign away; until then the anchor wins.',
  }),
  'slur-into-anchor': p => ({
    message: `A slur runs into the anchor "${p.facts.anchor}" at ${noteNamed(p.facts.note)}, where a stroke begins.`,
    mend: `End the slur before ${noteNamed(p.facts.note)}, or start the anchor earlier.`,
  }),
  'arrival-missed': p => ({
    message:
      `The bow comes to the anchor "${p.facts.anchor}" (${noteNamed(p.facts.note)}) on ` +
      `${aBow(p.actual)}, but is to start it on ${aBow(p.expected[0] ?? null)} (${passesText(p)}).`,
    mend: p.facts.mend
      ? `${editTextSentence(String(p.facts.mend))}${others(Number(p.facts.mends) - 1)}`
      : 'No single change mends it in every pass; look at the repeats, or at the plans.',
  }),
};

/** "its bars run from A1 to B8"; notes, where a bar has not so many. */
function barsText({ expected }: Problem): string {
  const [first, ...more] = expected;
  if (first === undefined) return 'that bar has no notes';
  if (more.length === 0) return `it has only ${first}`;
  return `${first.includes(':') ? 'that bar' : 'it'} runs from ${first} to ${more.at(-1)}`;
}

const aBow = (direction: string | null): string =>
  direction === 'up' ? 'an up-bow' : 'a down-bow';

const strokes = (n: number): string => (n === 1 ? '1 stroke' : `${n} strokes`);

const passesText = (p: Problem): string => {
  const passes = String(p.facts.passes);
  return passes.includes(',') ? `passes ${passes}` : `pass ${passes}`;
};

function mendText(p: Problem, otherwise: string): string {
  const mends = String(p.facts.mends ?? '')
    .split('; ')
    .filter(Boolean);
  return mends[0] ? `${editTextSentence(mends[0])}${others(mends.length - 1)}` : otherwise;
}

const others = (n: number): string =>
  n === 0 ? '' : n === 1 ? ' One other change would do too.' : ` ${n} other changes would do too.`;

/** An edit as text (`slur B5:2-B5:3`, see `editText`) as a sentence. */
function editTextSentence(text: string): string {
  const [kind, ...rest] = text.split(' ');
  const [first = '', second = ''] = rest.join(' ').split(/ (?:to|into) /);
  const from = spansText(first);
  switch (kind) {
    case 'slur':
      return `Slur ${from}.`;
    case 'drop':
      return `Take away the slur over ${from}.`;
    case 'lengthen':
      return `Lengthen the slur over ${from}: let it hold ${spansText(second)}.`;
    case 'shorten':
      return `Shorten the slur over ${from}: let it hold ${spansText(second)}.`;
    case 'split':
      return `Split the slur over ${from}: slur ${spansText(second)}.`;
    case 'merge':
      return `Make one slur of ${from}.`;
    default: {
      const [bar, note] = (rest.at(-1) ?? '').split(':');
      return `Lift the bow before note ${note} of ${bar} and start it again ${rest[0]}.`;
    }
  }
}

/** Spans as `editText` writes them, in words. */
const spansText = (text: string): string =>
  text.replaceAll(/([^ ]+?):(\d+)-([^ ]+?):(\d+)/g, (_, bar, note, lastBar, last) =>
    idSpan({ bar, note }, { bar: lastBar, note: last }),
  );

/** "Slur notes 2 to 3 of B5." One sentence for an edit, naming its notes and bars. */
export function editSentence(tune: Tune, edit: Edit): string {
  const span = (g: SlurGroup): string => spanWords(tune, g);
  switch (edit.kind) {
    case 'slur':
      return `Slur ${span(edit.notes)}.`;
    case 'drop':
      return `Take away the slur over ${span(edit.notes)}.`;
    case 'lengthen':
      return `Lengthen the slur over ${span(edit.from)}: let it hold ${span(edit.to)}.`;
    case 'shorten':
      return `Shorten the slur over ${span(edit.from)}: let it hold ${span(edit.to)}.`;
    case 'split':
      return `Split the slur over ${span(edit.from)}: slur ${edit.to.map(span).join(' and ')}.`;
    case 'merge':
      return `Make one slur of ${edit.from.map(span).join(' and ')}.`;
    case 'retake':
      return `Lift the bow before ${noteWords(tune, edit.before)} and start it again ${edit.direction}.`;
  }
}

/** "notes 2 and 3 of B5", "note 8 of B5 to note 1 of B6". */
export const spanWords = (tune: Tune, group: SlurGroup): string =>
  idSpan(idParts(tune, group[0]), idParts(tune, group.at(-1)));

interface NoteName {
  readonly bar: string;
  readonly note: string;
}

/** "notes 2 and 3 of B5", "note 8 of B5 to note 1 of B6". */
function idSpan(first: NoteName, last: NoteName): string {
  if (first.bar === last.bar) {
    const joint = Number(last.note) - Number(first.note) === 1 ? 'and' : 'to';
    return `notes ${first.note} ${joint} ${last.note} of ${first.bar}`;
  }
  return `note ${first.note} of ${first.bar} to note ${last.note} of ${last.bar}`;
}

/** "note 3 of B5". */
export const noteWords = (tune: Tune, e: number): string => {
  const { bar, note } = idParts(tune, e);
  return `note ${note} of ${bar}`;
};

function idParts(tune: Tune, e: number | undefined): NoteName {
  const event = tune.events[e ?? -1];
  const [bar, note] = event?.kind === 'note' ? event.id.split(':') : [];
  return { bar: bar ?? '', note: note ?? '' };
}

/** What each reason of a plan says, as a sentence of its own. */
export const reasonSentences: Readonly<Record<Reason, string>> = {
  'as-written': 'It arrives as it is written.',
  'flips-once': 'One change turns the bow round, so it arrives.',
  'two-flips': 'Two changes turn the bow round and back again, so it arrives.',
  'many-flips': 'Taken together the changes leave the bow going the right way.',
  keeps: 'What it changes leaves the bow going the same way, so it still arrives.',
  'fewest-changes': 'No other way changes less.',
  'beats-down': 'Every strong beat is a down-bow.',
  'beats-up': 'Every strong beat is an up-bow.',
  'into-beats': 'Every slur leads into a beat.',
  stepwise: 'The slurs go by step and stay on one string.',
  'phrases-alike': 'Phrases that are the same are bowed the same.',
  'phrases-untied': 'Phrases that are the same cannot all be bowed the same and arrive.',
};

const clauses: Readonly<Partial<Record<Reason, string>>> = {
  'flips-once': 'which turns the bow round once, so it arrives',
  'two-flips': 'which turns the bow round and back again, so it arrives',
  'many-flips': 'which together leave the bow going the right way, so it arrives',
  keeps: 'which leaves the bow going the same way, so it still arrives',
};

const extras: Readonly<Partial<Record<Reason, string>>> = {
  'beats-down': 'every strong beat is a down-bow',
  'beats-up': 'every strong beat is an up-bow',
  'into-beats': 'every slur leads into a beat',
  stepwise: 'the slurs go by step on one string',
  'phrases-alike': 'like phrases stay alike',
  'phrases-untied': 'like phrases cannot all stay alike',
};

/** One plain sentence for a plan: what it changes, and why it arrives. */
export function planSentence(tune: Tune, plan: Plan): string {
  if (plan.changes.length === 0) return reasonSentences['as-written'];
  const changes = plan.changes.map((edit, i) =>
    i === 0 ? editSentence(tune, edit).slice(0, -1) : inSentence(tune, edit),
  );
  const why = plan.because.flatMap(reason => clauses[reason] ?? []);
  const more = plan.because.flatMap(reason => extras[reason] ?? []);
  return `${listWords(changes, ', then ')}, ${why.join(', ')}${more.length > 0 ? `; ${listWords(more)}` : ''}.`;
}

function listWords(items: readonly string[], joint = ' and '): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')}${joint}${items.at(-1)}`;
}

/** "Each time through takes 33 strokes, so the second time starts the other way round." */
export function repeatSentence(repeat: RepeatStudy): string {
  const counts = [...new Set(repeat.strokes)];
  const each =
    repeat.strokes.length < 2
      ? `Once through takes ${strokes(counts[0] ?? 0)}`
      : counts.length === 1
        ? `Each time through takes ${strokes(counts[0] ?? 0)}`
        : `The times through take ${listWords(repeat.strokes.map(String))} strokes`;
  const second =
    repeat.secondPass === null
      ? ''
      : repeat.secondPass === 'same'
        ? ', and the second time starts on the same stroke as the first'
        : ', and the second time starts the other way round';
  return `${each}${second}.`;
}

/** How the whole tune can be mended at once, or what stands in the way. */
export function wholeTuneSentence(tune: Tune, whole: WholeTune): string {
  switch (whole.kind) {
    case 'solved':
      return whole.changes.length === 0
        ? 'Nothing need change.'
        : `To mend the whole tune at once: ${whole.changes.map(e => inSentence(tune, e)).join('; ')}.`;
    case 'contradiction':
      return whole.demands.length === 1
        ? `No slurs can meet this: ${demandWords(tune, whole.demands[0] as Demand)}.`
        : `No slurs can meet these together: ${whole.demands.map(d => demandWords(tune, d)).join('; ')}.`;
    case 'beyond-limits':
      return 'It can be mended at once, but not with slurs as short as this level takes.';
    case 'too-many':
      return 'There are too many ways to mend the whole tune at once; mend one place at a time.';
    case 'unlike-passes':
      return 'A tie over a repeat sign makes the passes unlike; mend one place at a time.';
  }
}

function inSentence(tune: Tune, edit: Edit): string {
  const sentence = editSentence(tune, edit).slice(0, -1);
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

function demandWords(tune: Tune, demand: Demand): string {
  switch (demand.kind) {
    case 'anchor':
      return `the anchor "${demand.id}" reached on its stroke, pass ${demand.pass}`;
    case 'sign':
      return `the sign on ${noteWords(tune, demand.event)}, pass ${demand.pass}`;
    case 'repeat':
      return `part ${tune.parts[demand.part]?.name ?? ''} starting the second time as the first`;
    case 'opening':
      return 'the first full bar starting down';
  }
}
