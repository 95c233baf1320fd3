import type { Level } from '../../bowing/settings.ts';
import type { DrillKind, NoDrill } from '../../drills/drill.ts';
import type { MendVerdict } from '../../drills/judge-mend.ts';
import type { Messages } from '../problem-words.ts';
import type { NoDrillPhrases } from '../tell-drill.ts';

/** Labels of drills. Sentences of the drills themselves are in `tell-drill.ts`. */
export const drillWords = {
  practise: 'Practise',
  practiseHow:
    'Play first, then answer. Nothing is counted and nothing is kept. Rest before you tire; stop if it hurts, and see a doctor or a physiotherapist if it lasts.',
  answer: 'Answer, and why',
  answers: 'Answers to the questions',
  answerTo: (title: string, tune: string): string => `${title}: ${tune}`,
  check: 'Check',
  clear: 'As it was',
  another: 'Another one',
  harder: 'Harder',
  easier: 'Easier',
  listen: 'Listen',
  stop: 'Stop',
  right: 'Yes.',
  wrong: 'Not this one.',
  rightMark: 'right',
  wrongMark: 'not this',
  levelIs: (level: Level): string => levelNames[level],
  choose: 'choose',
  gapsLeft: (right: number, all: number): string =>
    right === all ? 'Yes, all are right.' : `${right} of ${all} right; look again at the others.`,
  blank: 'left out',
  join: (from: string, to: string): string => `Between ${from} and ${to}`,
  joins: { change: 'change', slur: 'slur', lift: 'lift' },
  anchor: 'the passage',
  notLoaded: 'The tune did not load, so only the question on the page can be asked.',
  onlyOne: 'This tune has no other question of this kind at this level.',
  noLevel: 'This tune has no question of this kind at that level.',
} as const;

const levelNames: Readonly<Record<Level, string>> = {
  beginner: 'For a beginner:',
  improver: 'For an improver:',
  advanced: 'For the advanced:',
};

/** What each kind is called. */
export const drillTitles: Readonly<Record<DrillKind, string>> = {
  call: 'Call and response',
  gaps: 'Notes left out',
  count: 'Count the strokes',
  arrive: 'Mend the arrival',
  start: 'Start anywhere',
  same: 'Same or different',
  forks: 'Which way now',
  into: 'Into the passage',
};

/** What gets harder; the numbers are those of `drillLevels`. */
export const levelSays: Readonly<Record<DrillKind, Readonly<Record<Level, string>>>> = {
  call: {
    beginner: 'one bar; the others to choose from are other bars of the tune.',
    improver: 'two bars; some of the others differ only in two notes.',
    advanced: 'four or eight bars, asked at any place; the others differ only in two notes.',
  },
  gaps: {
    beginner: 'one note in ten is left out of a phrase.',
    improver: 'one note in four is left out of a phrase.',
    advanced: 'half or three quarters of the notes are left out of two phrases.',
  },
  count: {
    beginner: 'one bar: how many strokes, or which way one goes.',
    improver: 'two bars: how many strokes, which way, and which notes are slurred.',
    advanced: 'four bars, and which notes a stroke takes.',
  },
  arrive: {
    beginner: 'the last two bars before the passage, with short slurs.',
    improver: 'the last four bars before the passage.',
    advanced: 'the last eight bars before the passage, with longer slurs.',
  },
  start: {
    beginner: 'at the start of a phrase.',
    improver: 'at the start of any bar.',
    advanced: 'on any note.',
  },
  same: {
    beginner: 'phrases that part early, or not at all, with their notes shown.',
    improver: 'any two phrases that are kin, with their notes shown.',
    advanced: 'phrases that part late, by heart: only the places of the notes are shown.',
  },
  forks: {
    beginner: 'only the ways that follow this phrase, with how each begins.',
    improver: 'one phrase more than follow it, with how each begins.',
    advanced: 'from all the phrases, by name only.',
  },
  into: {
    beginner: 'from one bar before, then two.',
    improver: 'from one bar before, then two, then four.',
    advanced: 'from one bar before, then two, four and eight.',
  },
};

/** What comes of a change tried on a wrong arrival. */
export const mendVerdicts: Readonly<Record<MendVerdict, string>> = {
  mends: 'Yes, it arrives: every time through, and nothing else is turned round.',
  misses: 'It still comes the wrong way, at least one time through.',
  harms: 'It arrives here, but turns the bow round where it was right before.',
  beyond:
    'It would arrive, but this slur is longer than this level plays, or joins notes that cannot share a stroke.',
  several: 'That is more than one change. One is enough.',
  nothing: 'Nothing is changed yet.',
};

export const noDrill: NoDrillPhrases = {
  sentence: why => `This tune gives no such drill: ${why}.`,
  why: {
    'no-notes': 'it has no notes',
    'no-anchor': 'it has no anchor to arrive at',
    'anchor-not-reached': 'no stroke begins at its anchor',
    'no-way-there': 'no full bar leads into its anchor',
    'no-mend': 'no single change on the way to its anchor can be found that mends it',
    'no-fork': 'none of its phrases goes on in two ways',
    'no-kin': 'no two of its phrases are alike enough to compare',
    'all-anchor': 'its anchor takes up all of it, and no note of an anchor is left out',
    'too-plain': 'it has too few different notes to ask about',
  },
};

/** What to do about a drill that a tune does not give. */
const mends: Readonly<Record<NoDrill, string>> = {
  'no-notes': 'Write its notes, or take the drill out.',
  'no-anchor': 'Set one with `:::anchor`, or choose another kind of drill.',
  'anchor-not-reached': 'Begin the anchor on a note that the bow begins.',
  'no-way-there': 'Choose another kind of drill, or an anchor later in the tune.',
  'no-mend': 'Choose another level, or another kind of drill.',
  'no-fork': 'Choose another kind of drill.',
  'no-kin': 'Choose another kind of drill.',
  'all-anchor': 'Make the anchor shorter, or choose another kind of drill.',
  'too-plain': 'Choose another kind of drill.',
};

/** What can be wrong with a drill block. */
export const drillMessages = {
  'drill-impossible': p => {
    const why = p.facts.why as NoDrill;
    const mend = mends[why];
    return {
      message: `The tune "${p.facts.tune}" gives no drill of the kind \`${p.actual}\`: ${noDrill.why[why]}.`,
      mend:
        p.expected.length > 0
          ? `${mend} It does give ${p.expected.map(k => `\`${k}\``).join(', ')}.`
          : mend,
    };
  },
} satisfies Partial<Messages>;
