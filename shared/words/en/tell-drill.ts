import type { BarSpan, BarsPlayed, DrillPhrases } from '../drill-phrases.ts';
import { capital } from '../text.ts';
import { aBow, count, ordinal } from './grammar.ts';

export const drills: DrillPhrases = {
  beads: {
    nth: n => `note ${n}`,
    leftOut: 'left out',
    slurredOn: 'slurred on',
    bow: { down: 'down-bow', up: 'up-bow' },
  },
  call: {
    question: bars =>
      `Play ${barsWords(bars)} once, or have it played to you. Look away, answer with your fiddle from memory, then choose.`,
    ask: bars => `Which choice has the notes of ${barsWords(bars)}?`,
    choice: n => `Choice ${n}`,
    notesOf: bars => `Those are the notes of ${barsWords(bars)}.`,
    swapped: (n, next) => `There notes ${n} and ${next} have changed places.`,
    why: (bars, letters) =>
      `${capital(barsWords(bars))} ${isOne(bars) ? 'goes' : 'go'} ${letters}.`,
  },
  gaps: {
    question: (bars, gaps, notes) =>
      `In ${barsWords(bars)}, ${count(gaps, 'note')} of ${notes} ${gaps === 1 ? 'is' : 'are'} left out. Play it through with all its notes, then fill in what is missing.`,
    why: 'Notes that only pass between two others are left out first and phrase starts last, since memory takes hold at the starts.',
  },
  start: {
    question: (place, phrase, varying) =>
      `Start at ${place}${phrase ? `, where phrase ${phrase} begins` : ''}${firstTime(varying)}. Set the finger and the bow before you answer.`,
    asks: {
      note: {
        ask: 'Which note?',
        why: note => `It is ${note}.`,
        not: 'Another note stands there.',
      },
      string: {
        ask: 'Which string?',
        why: string => `It lies on the ${string} string.`,
        not: 'It does not lie on that string.',
      },
      finger: {
        ask: 'Which finger?',
        why: finger => `The finger is ${finger}.`,
        not: 'That finger would give another note on its string.',
      },
      stroke: {
        ask: 'Which stroke?',
        why: ({ stroke, varying }) => `It comes on ${aBow(stroke)}${firstTime(varying)}.`,
        not: 'The bow comes to it the other way.',
      },
    },
    answer: (note, stroke, varying) => `${note}, on ${aBow(stroke)}${firstTime(varying)}.`,
    why: (reached, before, stroke) =>
      before === 0
        ? `Its bar is reached on ${aBow(reached)}, and this is the first stroke of the bar.`
        : `Its bar is reached on ${aBow(reached)}, and ${count(before, 'stroke')} later the bow goes ${stroke}.`,
  },
  count: {
    begins: (bars, starts) =>
      `${capital(barsPlayed(bars))}${bars.pass ? ',' : ''} ${isOne(bars) ? 'begins' : 'begin'} on ${aBow(starts)}.`,
    strokes: {
      question: bars =>
        `${capital(barsPlayed(bars))}: play ${isOne(bars) ? 'it' : 'them'} and count the strokes, not the notes.`,
      ask: 'How many strokes?',
      answer: strokes => `${count(strokes, 'stroke')}.`,
      why: (notes, joined) =>
        joined === 0
          ? `There are ${notes} notes and no slurs, so each note has a stroke of its own.`
          : `There are ${notes} notes, and ${joined} of them ${joined === 1 ? 'goes' : 'go'} on in the stroke before, which leaves ${notes - joined}.`,
    },
    slurs: {
      question: bars =>
        `Here is ${barsPlayed(bars)}, with the way the bow goes on each note and without slurs.`,
      ask: 'Which of these are one whole stroke?',
      not: 'Those notes are not one whole stroke: look where the signs change.',
      why: notes =>
        `The bow goes on the same way through ${notes} and changes before and after, so they are one stroke.`,
    },
    direction: {
      ask: place => `On which stroke is ${place}?`,
      not: 'Count again: each stroke turns the bow, and a slur is one stroke.',
      answer: stroke => `On ${aBow(stroke)}.`,
      why: (nth, starts) =>
        `It is the ${ordinal(nth)} stroke from ${aBow(starts)}, and strokes take turns.`,
    },
    notes: {
      ask: nth => `Which notes does the ${ordinal(nth)} stroke take?`,
      not: 'Count strokes and not notes: a slur is one stroke.',
      why: (nth, notes) => `Counted by strokes, the ${ordinal(nth)} is ${notes}.`,
    },
    miscounts: {
      notes: 'That is how many notes there are, and notes under one slur share a stroke.',
      'written-notes': 'That counts a tied note anew, and a tie never needs a new stroke.',
      'notes-less-slurs':
        'That takes one off for each slur, but a slur over three notes takes off two.',
      'slurs-only': 'That counts the slurs alone, and a single note takes a stroke too.',
      'one-more': 'That is one too many.',
      'one-less': 'That is one too few.',
      'two-more': 'That is two too many.',
    },
  },
  arrive: {
    question: (place, wanted, pass) =>
      `The passage begins at ${place} on ${aBow(wanted)}. As bowed here${pass ? `, the ${ordinal(pass)} time through,` : ''} the bow would come to it on ${aBow(wanted === 'down' ? 'up' : 'down')}.`,
    broken:
      'One thing was changed in the tune’s own bowing to turn it wrong; other changes may mend it too.',
    asBowed: 'This is how the tune is bowed.',
    change: 'Make one change on the way: a slur more, a slur less, one longer or shorter.',
    changeOrLift:
      'Make one change on the way: a slur more, a slur less, one longer or shorter, or a lift where the bow may lift.',
    wayThere: bars => `The way there, from ${barsWords(bars)}`,
    moreMends: n => `${count(n, 'other change')} would do too.`,
    why: 'One stroke more or one stroke less turns round every stroke after it, so the bow arrives the other way.',
  },
  into: {
    question: (place, wanted) =>
      `The passage begins at ${place} on ${aBow(wanted)}. Come into it from farther and farther back, and play each way in before you go on.`,
    comesTurned: pass =>
      `As the tune is bowed, the bow comes here the other way round${pass ? ` the ${ordinal(pass)} time through` : ''}, so begin so that it does not.`,
    ask: (bars, place) =>
      `${count(bars, 'bar')} before, from ${place}: on which stroke do you begin?`,
    not: stroke => `Then the passage would come on ${aBow(stroke)}.`,
    itemWhy: (strokes, lifts, stroke) =>
      `${count(strokes, 'stroke')}${lifts > 0 ? ` and ${count(lifts, 'lift')}` : ''} later the bow goes ${(strokes + lifts) % 2 === 0 ? 'the same way as it began' : 'the other way'}: ${stroke}.`,
    answer: (bars, start, strokes) =>
      `${count(bars, 'bar')} before: begin on ${aBow(start)}, ${count(strokes, 'stroke')} to the passage.`,
    why: 'An even number of strokes brings the bow back to the way it began, and an odd number turns it round.',
  },
  same: {
    question: (earlier, later) =>
      `${earlier} and ${later}: are they the same all the way, or at which note do they part?`,
    byHeart: 'Play both from memory, then point to the place in the second.',
    byNotes: 'Play both, then point to the place in the second.',
    ask: later => `The second, ${later}`,
    sameThroughout: 'the same all the way',
    not: {
      parts: 'They part somewhere.',
      alike: 'They are alike there, and all the way.',
      'still-alike': 'They are still alike there.',
      parted: 'They have parted before that.',
    },
    answerSame: 'They are the same all the way.',
    answerParts: place => `They part at ${place}.`,
  },
  forks: {
    question: (label, bars, time) =>
      `You have just played phrase ${label} at ${bars}, the ${ordinal(time)} time that it stands in the tune. Go on from there.`,
    ask: 'What comes next?',
    choice: (label, opening) => `Phrase ${label}${opening ? `: ${opening} …` : ''}`,
    follows: (label, after) => `Phrase ${label} follows after ${after}.`,
    neverFollows: (label, here) => `Phrase ${label} never follows phrase ${here}.`,
    answer: (label, bars) => `Phrase ${label}, ${bars}.`,
  },
};

const isOne = ({ from, to }: BarSpan): boolean => from === to;

/** "bar A3", "bars A3 to A6". */
const barsWords = ({ from, to }: BarSpan): string =>
  from === to ? `bar ${from}` : `bars ${from} to ${to}`;

const barsPlayed = (bars: BarsPlayed): string =>
  `${barsWords(bars)}${bars.pass ? `, the ${ordinal(bars.pass)} time through` : ''}`;

const firstTime = (varying: boolean): string => (varying ? ', the first time through' : '');
