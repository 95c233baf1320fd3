import type { Direction } from '../bowing/bowing.ts';
import { at, got } from '../must.ts';
import type { Dice } from './dice.ts';
import {
  type CountDrill,
  type DrillAsk,
  drillLevels,
  type Miscount,
  type NoDrill,
} from './drill.ts';
import { type DrillSource, partsFor } from './drill-source.ts';
import { isWholeStrokes, type PlayedStretch, playedStretches } from './played-stretches.ts';

/**
 * Count the strokes of some bars, say which notes are slurred, which way a stroke goes, or which
 * notes it takes. The bars begin and end with a stroke and the bow does not lift in them, so every
 * answer can be had by counting. Wrong choices come from usual mistakes (common practice).
 */
export function makeCount(source: DrillSource, ask: DrillAsk, dice: Dice): CountDrill | NoDrill {
  const parts = partsFor(source, ask.to);
  for (let length: number = drillLevels.count[ask.level]; length >= 1; length = length >> 1) {
    for (const stretch of slurredFirst(
      source,
      dice.shuffle(playedStretches(source, length, parts)),
    )) {
      const counted = countedBars(source, ask, stretch);
      if (!counted) continue;
      for (const question of dice.shuffle(questions[ask.level])) {
        const drill = question(source, counted, dice);
        if (drill) return drill;
      }
    }
  }
  return 'too-plain';
}

/** Bars with slurs come first: without one there is nothing to count but notes. */
const slurredFirst = (source: DrillSource, all: readonly PlayedStretch[]): PlayedStretch[] => {
  const { strokeOf } = source.bowing.plan;
  const plain = ({ from, end }: PlayedStretch): boolean =>
    at(strokeOf, end - 1) - at(strokeOf, from) === end - 1 - from;
  return [...all.filter(s => !plain(s)), ...all.filter(plain)];
};

type Counted = Omit<CountDrill, 'asks' | 'choices' | 'right' | 'stroke'>;
type Question = (source: DrillSource, counted: Counted, dice: Dice) => CountDrill | null;

/** The strokes of a stretch; null where it is not whole strokes, or the bow lifts in it. */
function countedBars(source: DrillSource, ask: DrillAsk, stretch: PlayedStretch): Counted | null {
  const { performance, bowing } = source;
  if (!isWholeStrokes(source, stretch)) return null;
  const first = at(bowing.plan.strokeOf, stretch.from);
  const last = at(bowing.plan.strokeOf, stretch.end - 1);
  const laid = bowing.plan.strokes.slice(first, last + 1);
  if (laid.slice(1).some(s => s.retake)) return null;
  const event = (k: number): number => at(performance.notes, k).event;
  return {
    ...ask,
    kind: 'count',
    bars: stretch.bars,
    pass: stretch.pass,
    notes: performance.notes.slice(stretch.from, stretch.end).map(n => n.event),
    strokes: laid.map(s => s.notes.map(event)),
    starts: at(laid, 0).direction,
  };
}

/** How many strokes: wrong are usual miscounts. */
const askStrokes: Question = (source, counted, dice) => {
  const right = counted.strokes.length;
  const wrong = miscounts(source, counted).filter(
    (m, i, all) =>
      m.count > 0 && m.count !== right && all.findIndex(o => o.count === m.count) === i,
  );
  const answer = { count: right, from: null };
  // The usual mistakes are in order of use; four wrong choices are plenty.
  const choices = [answer, ...dice.shuffle(wrong).slice(0, 4)].sort((a, b) => a.count - b.count);
  return { ...counted, asks: 'strokes', choices, right: choices.indexOf(answer) };
};

/** Counts that come of usual mistakes, some of which may be the true count by chance. */
function miscounts(
  { performance }: DrillSource,
  { notes, strokes }: Counted,
): { readonly count: number; readonly from: Miscount }[] {
  const slurs = strokes.filter(s => s.length > 1).length;
  const ties = new Map(performance.notes.map(n => [n.event, n.tied.length]));
  const written = notes.reduce(
    (sum, e) => sum + 1 + got(ties.get(e), 'sounded note of the event'),
    0,
  );
  return [
    { count: notes.length, from: 'notes' },
    { count: written, from: 'written-notes' },
    { count: notes.length - slurs, from: 'notes-less-slurs' },
    { count: slurs, from: 'slurs-only' },
    { count: strokes.length + 1, from: 'one-more' },
    { count: strokes.length - 1, from: 'one-less' },
    { count: strokes.length + 2, from: 'two-more' },
  ];
}

/** Which notes are taken in one stroke: wrong are the same slur moved by a note, longer, shorter. */
const askSlurs: Question = (_source, counted, dice) => {
  const { notes, strokes } = counted;
  const slurs = strokes.filter(s => s.length > 1);
  if (slurs.length === 0) return null;
  const answer = dice.pick(slurs);
  const [from, last] = [notes.indexOf(at(answer, 0)), notes.indexOf(at(answer, answer.length - 1))];
  const spans: readonly (readonly [number, number])[] = [
    [from + 1, last + 1],
    [from - 1, last - 1],
    [from, last + 1],
    [from - 1, last],
    [from, last - 1],
    [from + 1, last],
  ];
  const wrong = spans
    .filter(([a, b]) => a >= 0 && b < notes.length && b > a)
    .map(([a, b]) => notes.slice(a, b + 1))
    .filter(group => !strokes.some(s => s.join() === group.join()));
  return groupQuestion(answer, wrong, dice, (choices, right) => ({
    ...counted,
    asks: 'slurs',
    choices,
    right,
  }));
};

/** Which way a later stroke goes, the first being told. */
const askDirection: Question = (_source, counted, dice) => {
  if (counted.strokes.length < 3) return null;
  const stroke = 1 + dice.below(counted.strokes.length - 1);
  const choices: readonly Direction[] = ['down', 'up'];
  const right = (counted.starts === 'down') === (stroke % 2 === 0) ? 0 : 1;
  return { ...counted, asks: 'direction', stroke, choices, right };
};

/** Which notes a stroke takes: wrong are its neighbours, and the note of that number. */
const askNotes: Question = (_source, counted, dice) => {
  const { notes, strokes } = counted;
  if (strokes.length < 3 || strokes.length === notes.length) return null;
  const stroke = 1 + dice.below(strokes.length - 1);
  const answer = at(strokes, stroke);
  const wrong = [strokes[stroke - 1], strokes[stroke + 1], notes.slice(stroke, stroke + 1)].flatMap(
    group => (group && group.join() !== answer.join() ? [group] : []),
  );
  return groupQuestion(answer, wrong, dice, (choices, right) => ({
    ...counted,
    asks: 'notes',
    stroke,
    choices,
    right,
  }));
};

/** A question whose choices are groups of notes, in the order of the page; null without a wrong one. */
function groupQuestion(
  answer: readonly number[],
  wrong: readonly (readonly number[])[],
  dice: Dice,
  make: (choices: readonly (readonly number[])[], right: number) => CountDrill,
): CountDrill | null {
  const distinct = [...new Map(wrong.map(g => [g.join(), g])).values()];
  if (distinct.length === 0) return null;
  const choices = [answer, ...dice.shuffle(distinct).slice(0, 3)].sort(
    (a, b) => at(a, 0) - at(b, 0) || a.length - b.length,
  );
  return make(choices, choices.indexOf(answer));
}

/** What is asked at each level. */
const questions: Readonly<Record<DrillAsk['level'], readonly Question[]>> = {
  beginner: [askStrokes, askDirection],
  improver: [askStrokes, askSlurs, askDirection],
  advanced: [askStrokes, askSlurs, askDirection, askNotes],
};
