import type { CrossingFacts, StandoutPhrases } from '../standouts.ts';
import { bow } from './grammar.ts';

export const standouts: StandoutPhrases = {
  slurredPairs: pairs =>
    `${pairs.length === 1 ? 'Ein gebundenes Paar' : 'Zu zweien gebunden'}: ${pairs.join(', ')}.`,
  run: (way, notes) =>
    `Ein Lauf von ${notes.length} Tönen ${way === 'up' ? 'aufwärts' : 'abwärts'}: ${notes.join(', ')}.`,
  sameFinger: (finger, first, second) =>
    `Finger ${finger} auf zwei Saiten: ${first} und ${second}.`,
  symmetricStrokes: counts => `Die Striche sind von beiden Enden her gleich: ${counts.join(' ')}.`,
  everyCrossingOn: stroke => `Jede neue Saite beginnt im ${bow(stroke)}.`,
  crossings: told =>
    `${told.length === 1 ? 'Ein Saitenwechsel' : 'Saitenwechsel'}: ${told.map(crossing).join(', ')}.`,
};

function crossing({ to, stroke }: CrossingFacts): string {
  if (stroke === 'within') return `auf ${to} im selben Strich`;
  return stroke ? `auf ${to} im ${bow(stroke)}` : `auf ${to}`;
}
