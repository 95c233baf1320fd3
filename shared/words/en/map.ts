import type { MapPhrases } from '../map.ts';
import type { Messages } from '../problem-words.ts';
import { capital } from '../text.ts';
import { count, numberWord } from './grammar.ts';
import { noteNamed } from './note-name.ts';

export const map: MapPhrases = {
  own: 'A phrase of its own.',
  same: other => `The same as ${other}.`,
  kin: {
    ending: (other, difference) => `Starts like ${other} and ends in its own way${difference}.`,
    start: (other, difference) => `Starts in its own way and ends like ${other}${difference}.`,
    varied: (other, difference) => `A variation of ${other}${difference}.`,
    moved: (other, difference) => `${other} moved to other notes, in the same rhythm${difference}.`,
  },
  atFirstNote: '; they differ already at the first note',
  firstDifference: (place, note) => `; the first note that differs is ${place}, ${note}`,
  fork: (label, ways, kinds) =>
    `Phrase ${label} goes on in ${numberWord(kinds)} ways: ${ways.map(w => `after ${w.after} comes ${w.label} (${w.bars})`).join(', ')}.`,
  toLearn: (labels, free) => {
    const told = labels.join(', ');
    if (labels.length === 0) return 'There is no phrase to learn yet.';
    if (labels.length === 1) return `One phrase to learn: ${told}.${freeWords(free)}`;
    return `${capital(numberWord(labels.length))} different phrases to learn, in this order: ${told}.${freeWords(free)}`;
  },
};

function freeWords(free: number): string {
  if (free === 0) return '';
  return free === 1
    ? ' The other one comes free, since it repeats.'
    : ` The other ${numberWord(free)} come free, since they repeat.`;
}

const positions: Readonly<Record<number, string>> = {
  3: 'third',
  5: 'fifth',
  7: 'seventh',
};

/** What the fingering and the map have to say about a tune. */
export const mapMessages = {
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
    message: `The tune has ${count(p.facts.phrases, 'phrase')} (${p.facts.bars}), but \`labels\` has ${count(p.facts.given, 'label')}, so they are passed over.`,
    mend: `Give one label a phrase, as in \`${p.expected[0]}\`, or another \`unit\`.`,
  }),
  'finger-mark': p => ({
    message: `No string has ${p.facts.pitch} at ${noteNamed(p.facts.note)} under finger ${p.actual} in first position.`,
    mend: `Write finger ${p.expected.join(' or ')}, or leave the number out.`,
  }),
} satisfies Partial<Messages>;
