import { bowingContext } from '../bowing/lead-in-of.ts';
import { topPitch } from '../music/note-at.ts';
import { diatonic } from '../music/pitch.ts';
import { got } from '../must.ts';
import type { Dice } from './dice.ts';
import { type DrillAsk, drillLevels, type GapsDrill, type NoDrill } from './drill.ts';
import {
  type DrillSource,
  firstFullBar,
  gamutOf,
  isAnchored,
  notesOfBars,
  partsFor,
  pitchText,
} from './drill-source.ts';

/** Makes a drill of a phrase or two with notes left out, never one of an anchor. */
export function makeGaps(source: DrillSource, ask: DrillAsk, dice: Dice): GapsDrill | NoDrill {
  const parts = partsFor(source, ask.to);
  const { phrases } = source.map;
  const share = dice.pick<number>(drillLevels.gaps[ask.level]);
  const runs = phrases.flatMap((phrase, i) => {
    const run = phrases
      .slice(i, i + drillLevels.gapPhrases[ask.level])
      .filter(p => p.part === phrase.part);
    return parts.has(phrase.part) ? [run.flatMap(p => p.bars)] : [];
  });
  let why: NoDrill = 'too-plain';
  for (const bars of dice.shuffle(runs)) {
    const notes = notesOfBars(source, bars);
    if (notes.length < 3) continue;
    const gaps = chooseGaps(source, notes, share, dice);
    if (gaps.length === 0) {
      why = 'all-anchor';
      continue;
    }
    const choices = gamutOf(source, notesOfBars(source, [...source.tune.bars.keys()]));
    const pitches = choices.map(e => pitchText(source, e));
    if (choices.length < 2) continue;
    const right = gaps.map(e => pitches.indexOf(pitchText(source, e)));
    return { ...ask, kind: 'gaps', bars, notes, gaps, share, choices, right };
  }
  return why;
}

/**
 * Which of the notes to leave out: `share` hundredths of them, to the nearest whole note and one at
 * least, but never more than are free. Weak passing notes go first, then what stands off the beat, on
 * a beat, on a strong beat, and phrase starts last: recall is best at the starts of sections
 * (R. Chaffin, G. Imreh and M. Crawford, Practicing Perfection, 2002; cited from memory), so they hold the rest together. Of equals, by the dice. The anchor's notes
 * are never left out. Event indices, in order.
 */
export function chooseGaps(
  source: DrillSource,
  notes: readonly number[],
  share: number,
  dice: Dice,
): number[] {
  const free = notes.filter(e => !isAnchored(source, e));
  const ranks = gapRanks(source, free);
  const rankOf = (e: number): number => got(ranks.get(e), 'rank of the event');
  const wanted = Math.max(1, Math.round((notes.length * share) / 100));
  return dice
    .shuffle(free)
    .sort((a, b) => rankOf(a) - rankOf(b))
    .slice(0, wanted)
    .sort((a, b) => a - b);
}

/**
 * For each of some events, how soon it may be left out: 0 a passing note off the beat (a step from both its
 * neighbours), 1 off the beat, 2 on a beat, 3 on a strong beat, 4 the start of a phrase.
 */
function gapRanks(source: DrillSource, events: readonly number[]): ReadonlyMap<number, number> {
  const { tune, performance, fingering, map, settings } = source;
  const { strong, onBeat } = bowingContext(tune, performance, fingering, map, settings);
  const starts = new Set(
    map.phrases.flatMap(p => [p.first, firstFullBar(tune, p.bars)?.first ?? p.first]),
  );
  /** Staff steps of a note; null for a rest, and before and after the tune. */
  const height = (e: number): number | null => {
    const note = tune.events[e];
    return note?.kind === 'note' ? diatonic(topPitch(note)) : null;
  };
  const isStep = (a: number | null, b: number | null): boolean =>
    a !== null && b !== null && Math.abs(a - b) === 1;
  const rank = (e: number): number => {
    if (starts.has(e)) return 4;
    if (strong[e]) return 3;
    if (onBeat[e]) return 2;
    const here = height(e);
    return isStep(here, height(e - 1)) && isStep(here, height(e + 1)) ? 0 : 1;
  };
  return new Map(events.map(e => [e, rank(e)] as const));
}
