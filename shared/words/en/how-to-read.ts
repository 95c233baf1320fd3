import type { HowToReadPhrases } from '../how-to-read.ts';

export const marks: HowToReadPhrases = {
  strokes: {
    heading: 'Strokes of the bow',
    lead: 'The strokes take turns: down, up, down, up. Each note has a stroke of its own unless a slur says otherwise.',
    marks: {
      down: ['Down-bow', 'The hand moves away from the fiddle.'],
      up: ['Up-bow', 'The hand moves back towards the fiddle.'],
      slur: [
        'Slur',
        'A curve over two or more different notes: one stroke takes them all. Add one or leave one out, and every stroke after it turns round.',
      ],
      lift: [
        'Lifting the bow',
        'Two like strokes in a row: lift the bow and start again the same way.',
      ],
      dot: ['A dot over a sign', 'Another time through, this note is on the other stroke.'],
    },
  },
  alike: {
    heading: 'Where we all play alike',
    lead: 'A shaded passage with a frame round it is one whose notes and strokes the class has agreed. Elsewhere bow as you please, provided you come in on the stroke that its first sign shows.',
    marks: {
      gettingThere: [
        'Getting there',
        'Under the passage stands how the bow arrives, and the best few ways to arrive as asked.',
      ],
      bowDiagram: [
        'A bow with a line under it',
        'Where on the bow the notes fall. Time runs down the page; the line goes right on a down-bow and back on an up-bow, and each dot begins a note. Past the upright lines there is no more bow. It is a model, not a measurement: it moves the bow at one speed.',
      ],
    },
  },
  fingers: {
    heading: 'Fingers, strings and letters',
    lead: 'Numbers over a note are fingers: 0 is the open string, 1 the first finger, 4 the little one. Strings are named by their open note.',
    marks: {
      lowAndHigh: [
        'Low and high',
        note =>
          `“Low 2 on ${note.A}” is the second finger drawn back towards the first; “high 3 on ${note.D}” the third pushed forward.`,
      ],
      letters: [
        'Note letters',
        note =>
          `Letters under the staff name the notes: a comma marks the three lowest, on the ${note.G} string; capitals run from the ${note.C} above them to the ${note.B} on the ${note.A} string; small letters go on from there. A sharp, flat or natural is added only where the key does not say it.`,
      ],
    },
  },
  bars: {
    heading: 'Names of bars and notes',
    lead: 'A bar is named by its part and number: B7 is the seventh bar of part B.',
    marks: {
      pickup: ['Number 0', 'The pickup: B0 leads into B1.'],
      ending: [
        'A number after a slash',
        'Bars of an ending carry its number: A8/2 is bar 8 the second time.',
      ],
      notes: ['Notes', 'Notes are counted from 1 in each bar, rests left out.'],
    },
  },
  map: {
    heading: 'The map of a tune',
    lead: 'Each field is a phrase, in the order of the tune. A letter and a pattern stand for a family of phrases; the shape of the field shows where a phrase differs from the first of its family. Under the letter stand its first three notes, then their fingers and strings.',
    marks: {
      own: ['The first of its family', 'A plain field, with its own letter.'],
      same: ['The same again', 'A double edge: play just what you know.'],
      ending: [
        'Its own ending',
        'The right edge is round and broken: it begins as you know it, and ends otherwise.',
      ],
      start: [
        'Its own start',
        'The left edge is round and broken: it begins otherwise, and ends as you know it.',
      ],
      varied: ['A few notes differ', 'Broken lines above and below.'],
      notch: [
        'A notch in the upper edge',
        'The first note that differs stands there: at the left early in the phrase, at the right late.',
      ],
      moved: ['Moved', 'The field stands higher: the same shape, at another pitch.'],
    },
  },
  care: {
    heading: 'Take care of yourself',
    lead: 'Rest five minutes in every half hour, and lengthen your practice by no more than ten minutes a day, as BAPAM, the British charity for performers’ health, advises.',
    marks: {
      hands: [
        'Hands and shoulders',
        'Stop if it hurts; loosen thumb and shoulder; see a doctor or a physiotherapist if it lasts.',
      ],
      ears: ['Ears', 'Ears ringing? Quieter, or stop.'],
    },
  },
};
