import type { NoteNames } from '../../music/note-names.ts';
import type { Tune } from '../../music/tune.ts';
import type { Problem } from '../../problem.ts';
import type { Fork, Phrase, SectionMap } from '../../sections/section-map.ts';
import { spokenPitch } from './bound.ts';
import { noteNamed } from './note-name.ts';

/** The section map in sentences, one for each of its phrases and forks. */
export interface MapSentences {
  readonly phrases: readonly string[];
  readonly forks: readonly string[];
  readonly toLearn: string;
}

export function mapSentences(tune: Tune, map: SectionMap, names: NoteNames): MapSentences {
  return {
    phrases: map.phrases.map(p => kinSentence(tune, map, p, names)),
    forks: map.forks.map(f => forkSentence(map, f)),
    toLearn: toLearnSentence(map),
  };
}

/** "Starts like A1-A2 and ends in its own way; they part at note 3 of A6, E." */
export function kinSentence(tune: Tune, map: SectionMap, phrase: Phrase, names: NoteNames): string {
  const other = phrase.of === null ? undefined : map.phrases[phrase.of];
  if (!other || phrase.kin === 'own') return 'A phrase of its own.';
  const part = differenceWords(tune, phrase, names);
  switch (phrase.kin) {
    case 'same':
      return `The same as ${other.name}.`;
    case 'ending':
      return `Starts like ${other.name} and ends in its own way${part}.`;
    case 'start':
      return `Starts in its own way and ends like ${other.name}${part}.`;
    case 'varied':
      return `A variation of ${other.name}${part}.`;
    case 'moved':
      return `${other.name} moved to other notes, in the same rhythm${part}.`;
  }
}

/** "; the first note that differs is note 3 of A6, E"; "; they differ already at the first note". */
function differenceWords(tune: Tune, phrase: Phrase, names: NoteNames): string {
  const opening = firstNote(tune, phrase);
  if (opening === phrase.firstDifference) return '; they differ already at the first note';
  const e = tune.events[phrase.firstDifference ?? -1];
  const top = e?.kind === 'note' ? e.pitches.at(-1) : undefined;
  if (e?.kind !== 'note' || !top) return '';
  const [bar, number] = e.id.split(':');
  return `; the first note that differs is note ${number} of ${bar}, ${spokenPitch(top, names)}`;
}

/** Event index of a phrase's first note, the pickup into it left out. */
function firstNote(tune: Tune, phrase: Phrase): number | null {
  const full = phrase.bars.map(b => tune.bars[b]).find(bar => bar && !bar.pickup);
  for (let e = full?.first ?? phrase.first; e < phrase.end; e++) {
    if (tune.events[e]?.kind === 'note') return e;
  }
  return null;
}

/** "a goes on in two ways: after A1-A2 comes b, after A5-A6 comes c." */
export function forkSentence(map: SectionMap, fork: Fork): string {
  const ways = fork.goesOn.map(({ after, to }) => {
    const [from, next] = [map.phrases[after], map.phrases[to]];
    return `after ${from?.name} comes ${next?.label} (${next?.name})`;
  });
  const count = new Set(fork.goesOn.map(w => map.phrases[w.to]?.label)).size;
  return `Phrase ${fork.label} goes on in ${numberWord(count)} ways: ${ways.join(', ')}.`;
}

/** "Five different phrases to learn, in this order: a, b, c, a′, d. The other three come free." */
export function toLearnSentence(map: SectionMap): string {
  const count = map.toLearn.length;
  const free = map.phrases.length - count;
  const labels = map.toLearn.map(i => map.phrases[i]?.label).join(', ');
  if (count === 0) return 'There is no phrase to learn yet.';
  if (count === 1) return `One phrase to learn: ${labels}.${freeWords(free)}`;
  const first = `${capital(numberWord(count))} different phrases to learn`;
  return `${first}, in this order: ${labels}.${freeWords(free)}`;
}

function freeWords(free: number): string {
  if (free === 0) return '';
  return free === 1
    ? ' The other one comes free, since it repeats.'
    : ` The other ${numberWord(free)} come free, since they repeat.`;
}

const numbers = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');
const numberWord = (n: number): string => numbers[n] ?? `${n}`;
const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const positions: Readonly<Record<number, string>> = {
  3: 'third',
  5: 'fifth',
  7: 'seventh',
};

/** What the fingering and the map have to say about a tune. */
export const mapMessages: Record<string, (p: Problem) => { message: string; mend: string }> = {
  'out-of-reach': p => {
    const { pitch, times, where, position, finger, string, note } = p.facts;
    const often = times === 1 ? 'once' : `${times} times`;
    const message = `${pitch} (${often}, first at ${noteNamed(note)})`;
    if (where === 'below') {
      return {
        message: `${message} is lower than the lowest string, ${p.expected[0]}.`,
        mend: 'Write it an octave higher, transpose the tune, or name the tuning that has it.',
      };
    }
    const place = positions[Number(position)];
    if (!place) {
      return {
        message: `${message} lies far above first position.`,
        mend: 'Write it an octave lower, or transpose the tune.',
      };
    }
    return {
      message: `${message} cannot be reached in first position.`,
      mend: `Shift to ${place} position and take it with finger ${finger} on string ${string}, or transpose the tune.`,
    };
  },
  'chord-strings': p => ({
    message:
      p.facts.strings === 'apart'
        ? `The chord ${p.actual} at ${noteNamed(p.facts.note)} needs strings that are not neighbours, so the bow cannot play it.`
        : `The chord ${p.actual} at ${noteNamed(p.facts.note)} has two notes that need the same string.`,
    mend: 'Leave a note out, or choose notes that lie on neighbouring strings.',
  }),
  'labels-count': p => ({
    message: `The tune has ${count(Number(p.facts.phrases), 'phrase')} (${p.facts.bars}), but \`labels\` has ${count(Number(p.facts.given), 'label')}, so they are passed over.`,
    mend: `Give one label a phrase, as in \`${p.expected[0]}\`, or another \`unit\`.`,
  }),
  'finger-mark': p => ({
    message: `No string has ${p.facts.pitch} at ${noteNamed(p.facts.note)} under finger ${p.actual} in first position.`,
    mend: `Write finger ${p.expected.join(' or ')}, or leave the number out.`,
  }),
};
