import type { LeadInFacts, NoPlanLanguage, PlanPhrases } from '../plans.ts';
import { capital, uncapital } from '../text.ts';
import { aBow, big, countOne, listed, ordinal } from './grammar.ts';

export const plans: PlanPhrases = {
  arrival: (stroke, agrees, passes) =>
    `${passes ? `${times(passes)}, as` : 'As'} written, the bow arrives on ${aBow(stroke)}, ${agrees ? 'as it should' : 'the wrong way round'}.`,
  leadIn: way =>
    `${way.passes ? `${times(way.passes)}: t` : 'T'}he way there starts at ${way.place}, on ${aBow(way.start)}. ${countOne(way.notes, 'note')} in ${countOne(way.strokes, 'stroke')}, ${verdict(way)}.`,
  ways: ({ groupings, arriving, allowed, allowedArriving }) =>
    `There ${groupings === 1n ? 'is one way' : `are ${big(groupings)} ways`} to share these notes out between strokes, and ${big(arriving)} of them ${arriving === 1n ? 'arrives' : 'arrive'} as asked. Within what this level plays, ${big(allowedArriving)} of ${big(allowed)}.`,
  moreWays: shown => `These are ${shown} of them; more arrive within this level.`,
  moreMends: n =>
    n === 1
      ? 'One other change would do too, and is not listed.'
      : `${n} other changes would do too, and are not listed.`,
  strokeCount: strokes => `That makes ${countOne(strokes, 'stroke')}.`,
  drawnPlan: passes =>
    passes
      ? `${times(passes)}: the first of these ways, in notes`
      : 'The first of these ways, in notes',
  allOfBar: where => `all ${where}`,
  notesOfBar: (notes, where) =>
    `${notes.length === 1 ? 'note' : 'notes'} ${listed(notes)} ${where}`,
  varying: places =>
    `A dot over a sign means: not the same stroke every time through. The sign is the first time’s. So it is with ${listed(places)}.`,
  repeatOf: (part, repeat, mend) =>
    `Part ${part}: ${uncapital(repeat)}${mend ? ` To start both times alike: ${mend}.` : ''}`,
  slurs: notes => (notes.length === 0 ? 'no slurs' : notes.map(n => `slur ${n}`).join('; ')),
};

const verdict = ({ arrives, wanted }: LeadInFacts): string =>
  arrives === wanted
    ? `so the bow is ready for ${aBow(arrives)} at the passage, as it should be`
    : `so the bow would begin the passage on ${aBow(arrives)}, and it should be ${aBow(wanted)}`;

const times = (passes: readonly number[]): string => capital(`${listed(passes.map(ordinal))} time`);

export const noPlan: NoPlanLanguage['noPlan'] = {
  'no-stroke-begins':
    'No stroke begins at this passage: its first note is held over from the bar before, or it is never played.',
  'no-way-there': 'The passage begins where the strokes do, so there is no way there to plan.',
  'beyond-level':
    'Within what this level plays no way arrives, unless the bow is lifted or longer slurs are allowed.',
  'unlike-starts':
    'The bow sets out on one stroke one time and on the other stroke another time, so the same slurs cannot bring it here rightly each time.',
  'harms-next-time':
    'A change on the way would also turn round the stroke on which the way begins, since that is counted from what is played here or after it; so no one way serves.',
};
