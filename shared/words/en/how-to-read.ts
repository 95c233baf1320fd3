import type { NoteNames } from '../../music/note-names.ts';
import type { Letter } from '../../music/pitch.ts';
import { spokenPitch } from './spoken.ts';

/** The page that explains the marks. `sign` names a drawing of `parts/sign` or `parts/legend`. */
export interface MarkExplained {
  readonly sign:
    | 'down'
    | 'up'
    | 'slur'
    | 'own'
    | 'same'
    | 'ending'
    | 'start'
    | 'varied'
    | 'moved'
    | null;
  readonly name: string;
  readonly text: string;
}

export interface MarksSection {
  readonly id: string;
  readonly heading: string;
  readonly lead: string;
  readonly marks: readonly MarkExplained[];
}

export const howToRead = (names: NoteNames): readonly MarksSection[] => [
  {
    id: 'strokes',
    heading: 'Strokes of the bow',
    lead: 'The strokes take turns: down, up, down, up. Each note has a stroke of its own unless a slur says otherwise.',
    marks: [
      { sign: 'down', name: 'Down-bow', text: 'The hand moves away from the fiddle.' },
      { sign: 'up', name: 'Up-bow', text: 'The hand moves back towards the fiddle.' },
      {
        sign: 'slur',
        name: 'Slur',
        text: 'A curve over two or more different notes: one stroke takes them all. Add one or leave one out, and every stroke after it turns round.',
      },
      {
        sign: null,
        name: 'Lifting the bow',
        text: 'Two like strokes in a row: lift the bow and start again the same way.',
      },
      {
        sign: null,
        name: 'A dot over a sign',
        text: 'Another time through, this note is on the other stroke.',
      },
    ],
  },
  {
    id: 'alike',
    heading: 'Where we all play alike',
    lead: 'A shaded passage with a frame round it has set notes and set strokes. Everyone plays it the same way. The rest is yours, as long as the bow gets there going the right way.',
    marks: [
      {
        sign: null,
        name: 'Getting there',
        text: 'Under the passage stands how the bow arrives, and the best few ways to arrive as asked.',
      },
      {
        sign: null,
        name: 'A bow with a line under it',
        text: 'Where on the bow the notes fall. Time runs down the page; the line goes right on a down-bow and back on an up-bow, and each dot begins a note. Past the upright lines there is no more bow. It is a model, not a measurement: it moves the bow at one speed.',
      },
    ],
  },
  {
    id: 'fingers',
    heading: 'Fingers, strings and letters',
    lead: 'Numbers over a note are fingers: 0 is the open string, 1 the first finger, 4 the little one. Strings are named by their open note.',
    marks: [
      {
        sign: null,
        name: 'Low and high',
        text: `“Low 2 on ${named('A', names)}” is the second finger drawn back towards the first; “high 3 on ${named('D', names)}” the third pushed forward.`,
      },
      {
        sign: null,
        name: 'Note letters',
        text: `Letters under the staff name the notes: a comma marks the three lowest, on the ${named('G', names)} string; capitals run from the ${named('C', names)} above them to the ${named('B', names)} on the ${named('A', names)} string; small letters go on from there. A sharp, flat or natural is added only where the key does not say it.`,
      },
    ],
  },
  {
    id: 'bars',
    heading: 'Names of bars and notes',
    lead: 'A bar is named by its part and number: B7 is the seventh bar of part B.',
    marks: [
      { sign: null, name: 'Number 0', text: 'The pickup: B0 leads into B1.' },
      {
        sign: null,
        name: 'A number after a slash',
        text: 'Bars of an ending carry its number: A8/2 is bar 8 the second time.',
      },
      {
        sign: null,
        name: 'Notes',
        text: 'Notes are counted from 1 in each bar, rests left out.',
      },
    ],
  },
  {
    id: 'map',
    heading: 'The map of a tune',
    lead: 'Each block is a phrase, in the order of the tune. A letter and a pattern stand for a family of phrases; the shape of the block shows where a phrase differs from the first of its family. Under the letter stand its first three notes, then their fingers and strings.',
    marks: [
      { sign: 'own', name: 'The first of its family', text: 'A plain block, with its own letter.' },
      { sign: 'same', name: 'The same again', text: 'A double edge: play just what you know.' },
      {
        sign: 'ending',
        name: 'Its own ending',
        text: 'The right edge is round and broken: it begins as you know it, and ends otherwise.',
      },
      {
        sign: 'start',
        name: 'Its own start',
        text: 'The left edge is round and broken: it begins otherwise, and ends as you know it.',
      },
      { sign: 'varied', name: 'A few notes differ', text: 'Broken lines above and below.' },
      {
        sign: null,
        name: 'A notch in the upper edge',
        text: 'The first note that differs stands there: at the left early in the phrase, at the right late.',
      },
      {
        sign: 'moved',
        name: 'Moved',
        text: 'The block stands higher: the same shape, at another pitch.',
      },
    ],
  },
  {
    id: 'care',
    heading: 'Take care of yourself',
    lead: 'Rest five minutes in every half hour, and lengthen your practice by no more than ten minutes a day.',
    marks: [
      {
        sign: null,
        name: 'Hands and shoulders',
        text: 'Stop if it hurts; loosen thumb and shoulder; see a professional if it lasts.',
      },
      { sign: null, name: 'Ears', text: 'Ears ringing? Quieter, or stop.' },
    ],
  },
];

const named = (letter: Letter, names: NoteNames): string =>
  spokenPitch({ letter, alter: 0 }, names);
