import type { CrossingFacts, StandoutPhrases } from '../standouts.ts';
import { aBow } from './grammar.ts';

export const standouts: StandoutPhrases = {
  slurredPairs: pairs =>
    pairs.length === 1 ? `One slurred pair: ${pairs[0]}.` : `Slurred in twos: ${pairs.join(', ')}.`,
  run: (way, notes) => `A run of ${notes.length} letters ${way}: ${notes.join(', ')}.`,
  sameFinger: (finger, first, second) => `Finger ${finger} on two strings: ${first} and ${second}.`,
  symmetricStrokes: counts => `The strokes are the same from either end: ${counts.join(' ')}.`,
  everyCrossingOn: stroke => `Every new string begins on ${aBow(stroke)}.`,
  crossings: told =>
    `${told.length === 1 ? 'One new string' : 'New strings'}: ${told.map(crossing).join(', ')}.`,
};

function crossing({ to, stroke }: CrossingFacts): string {
  if (stroke === 'within') return `to ${to} within a stroke`;
  return stroke ? `to ${to} on ${aBow(stroke)}` : `to ${to}`;
}
