import { at } from '../must.ts';
import type { Dice } from './dice.ts';
import { type CallDrill, type DrillAsk, drillLevels, type NoDrill } from './drill.ts';
import { type DrillSource, notesOfBars, partsFor, pitchesText, pitchText } from './drill-source.ts';
import { type PlayedStretch, playedStretches } from './played-stretches.ts';

/**
 * Call and response. A call of so many bars is played and answered by heart; then its notes (of a
 * long call, two of its bars) stand among others. The others are bars of the same tune, for
 * beginners, or the true ones with two neighbours changed round, which is how a memory slips. None
 * has the same pitches in the same order as the answer.
 */
export function makeCall(source: DrillSource, ask: DrillAsk, dice: Dice): CallDrill | NoDrill {
  const parts = partsFor(source, ask.to);
  const wanted = dice.pick<number>(drillLevels.call[ask.level]);
  for (let length = wanted; length >= 1; length = length >> 1) {
    for (const stretch of dice.shuffle(playedStretches(source, length, parts))) {
      const drill = callOn(source, ask, dice, stretch);
      if (drill) return drill;
    }
  }
  return 'too-plain';
}

/** Notes shown at once, at most: a bar of reel has eight. */
const mostNotes = 24;

/** Wrong choices, at most. */
const mostOthers = 2;

/** The drill on one stretch; null where its notes are too few, too many, or nothing differs from them. */
function callOn(
  source: DrillSource,
  ask: DrillAsk,
  dice: Dice,
  { bars }: PlayedStretch,
): CallDrill | null {
  const halves = Math.max(1, bars.length >> 1);
  const at = dice.below(halves) * 2;
  const asked = bars.length > 2 ? bars.slice(at, at + 2) : bars;
  const answer = notesOfBars(source, asked);
  if (answer.length < 2 || answer.length > mostNotes) return null;
  const swapped = dice.shuffle(swaps(source, answer));
  const others = dice.shuffle(otherBars(source, asked));
  const wrong = {
    beginner: [...others, ...swapped],
    improver: [...others.slice(0, 1), ...swapped, ...others.slice(1)],
    advanced: [...swapped, ...others],
  }[ask.level];
  const seen = new Set([pitchesText(source, answer)]);
  const kept: (readonly number[])[] = [];
  for (const notes of wrong) {
    const text = pitchesText(source, notes);
    if (seen.has(text)) continue;
    seen.add(text);
    kept.push(notes);
    if (kept.length === mostOthers) break;
  }
  if (kept.length === 0) return null;
  const choices = dice.shuffle([answer, ...kept]);
  return { ...ask, kind: 'call', bars, asked, choices, right: choices.indexOf(answer) };
}

/** The notes with two neighbours changed round, for each pair that differs. */
const swaps = (source: DrillSource, notes: readonly number[]): number[][] =>
  notes.slice(1).flatMap((b, i) => {
    const a = at(notes, i);
    if (pitchText(source, a) === pitchText(source, b)) return [];
    return [notes.map((e, k) => (k === i ? b : k === i + 1 ? a : e))];
  });

/** The notes of every other stretch of as many bars that can be shown. */
const otherBars = (source: DrillSource, asked: readonly number[]): number[][] =>
  playedStretches(source, asked.length, new Set(source.tune.parts.keys()))
    .filter(s => !s.bars.some(b => asked.includes(b)))
    .map(s => notesOfBars(source, s.bars))
    .filter(notes => notes.length > 1 && notes.length <= mostNotes);
