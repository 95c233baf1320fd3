import type { Level } from '../../bowing/settings.ts';
import { capital, joined } from '../text.ts';
import type { TryPhrases } from '../try.ts';
import { aBow, countOne, listed, ordinal } from './grammar.ts';

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
  passName: (pass: number): string => `${capital(ordinal(pass))} time`,
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

export const trying: TryPhrases = {
  arrival: (stroke, wanted, passes) => {
    const when = passes ? `${capital(listed(passes.map(ordinal)))} time the` : 'The';
    const end =
      stroke === wanted ? 'as it should' : `the wrong way round: it should be ${aBow(wanted)}`;
    return `${when} bow arrives on ${aBow(stroke)}, ${end}.`;
  },
  strokes: (notes, strokes, start) =>
    `${countOne(notes, 'note')} in ${countOne(strokes, 'stroke')}, starting on ${aBow(start)}.`,
  pair: (first, second, place) => `${first} to ${second}, ${place}`,
  turned: (pairs, slurred) => `${slurred ? 'Slurred' : 'Parted'}: ${joined(pairs, ' and ', '; ')}.`,
  link: pair => `Slur ${pair}`,
  stroke: (direction, nth, of) =>
    `${direction}-bow${of === 1 ? '' : `, ${ordinal(nth)} of ${of} in its stroke`}`,
  noneTurnRound: 'No stroke on the way turns round.',
  turnRound: runs => `Turned round: ${joined(runs, ' and ', '; ')}.`,
  from: note => `from ${note} on`,
  fromTo: (first, last) => `from ${first} to ${last}`,
  manyNotes: (notes, most, level) =>
    `${notes} notes in one stroke, more than the ${most} to plan for here (${level})`,
  longStroke: seconds => `the stroke lasts more than ${seconds} seconds at the slow practice tempo`,
  slurOver: {
    repeated: 'the same note twice; slurred, the second is not heard',
    treble: 'the slur runs into or out of a treble, which wants strokes of its own',
    leap: 'their strings are not neighbours, so the bow must pass over one between',
    gap: 'the slur runs over a rest or a breath',
    signed: 'a sign asks for a new stroke at the second',
    'phrase-end': 'the slur runs over the end of a phrase, which this way of bowing leaves free',
  },
};
