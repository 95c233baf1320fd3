import { limits } from '../limits.ts';
import { at } from '../must.ts';
import { add, type Fraction, zero } from './fraction.ts';
import type { Performance, PlayedBar, SoundedNote } from './performance.ts';
import type { Bar, NoteEvent, Tune } from './tune.ts';

/**
 * Unrolls a tune: repeats, endings and the order of parts, then merges ties.
 *
 * A repeat goes back to `|:`; without one, to the start of its part (the last double bar that parts
 * the tune, or the last repeat's end), or to a double bar after the pickup, else to the start (ABC 2.1,
 * section 4.8). On each time through, a bar that belongs to an ending is played only when the ending
 * has that time's number. So
 *
 *     A0 |: A1 A2 |[1 A3/1 :|[2 A3/2 |]
 *
 * is played A0 A1 A2 A3/1 A1 A2 A3/2. After its last ending a stretch is done, though a repeat sign
 * stand there too.
 *
 * A tie joins a note to the next that sounds, in played order, where the pitches are the same: over
 * a bar line, into either ending, or from the end of a repeat back to its start.
 */
export function playedOrder(tune: Tune): Performance {
  const { bars: order } = unroll(tune);
  const plays = new Array<number>(tune.bars.length).fill(0);
  const bars: PlayedBar[] = [];
  const notes: SoundedNote[] = [];
  let onset: Fraction = zero;
  let gap = false;
  let tie: NoteEvent | null = null;
  for (const index of order) {
    const bar = at(tune.bars, index);
    const pass = at(plays, index) + 1;
    plays[index] = pass;
    const first = notes.length;
    for (let e = bar.first; e < bar.end; e++) {
      const event = at(tune.events, e);
      if (event.kind === 'rest') {
        gap = true;
        tie = null;
        continue;
      }
      const last = notes.at(-1);
      if (tie && last && samePitches(tie, event)) {
        notes[notes.length - 1] = {
          ...last,
          tied: [...last.tied, e],
          duration: add(last.duration, event.duration),
        };
      } else {
        notes.push({
          event: e,
          tied: [],
          pass,
          barPlayed: bars.length,
          onset: add(onset, event.onset),
          duration: event.duration,
          afterGap: gap,
        });
      }
      gap = event.breath;
      tie = event.tied ? event : null;
    }
    bars.push({ bar: index, pass, onset, first, end: notes.length });
    onset = add(onset, bar.length);
  }
  return { bars, notes, length: onset };
}

/** Written events that a performance may play; a tune past it is cut short there. */
export const longestPerformance = limits.playedNotes;

/**
 * Bar indices in the order in which they are played. `cut` says that the tune was longer than
 * `longestPerformance` notes and rests, and stops there.
 */
export function unroll(tune: Pick<Tune, 'bars' | 'parts' | 'order'>): {
  readonly bars: readonly number[];
  readonly cut: boolean;
} {
  const played: number[] = [];
  let events = 0;
  const play = (bar: number): boolean => {
    const { first, end } = at(tune.bars, bar);
    events += end - first;
    if (events > longestPerformance) return false;
    played.push(bar);
    return true;
  };
  const stretches = tune.order
    ? tune.order.map(part => at(tune.parts, part).bars)
    : [tune.bars.map((_, i) => i)];
  for (const stretch of stretches) {
    const bars = stretch.map(i => at(tune.bars, i));
    if (!unrollStretch(bars, place => play(at(stretch, place)))) return { bars: played, cut: true };
  }
  return { bars: played, cut: false };
}

/** Plays bars with their repeats, by their places in the list; false as soon as `play` refuses one. */
function unrollStretch(bars: readonly Bar[], play: (place: number) => boolean): boolean {
  let start = 0;
  let pass = 1;
  let opened = false;
  let here = 0;
  while (here < bars.length) {
    const bar = at(bars, here);
    if (bar.opensRepeat && start !== here) {
      start = here;
      pass = 1;
    }
    if (bar.opensRepeat) opened = true;
    const inEnding = bar.endings.length > 0;
    if (inEnding && !bar.endings.includes(pass)) {
      here += 1;
      if (!isInEnding(bars[here])) [start, pass, opened] = [here, 1, false];
      continue;
    }
    if (!play(here)) return false;
    const times = inEnding ? lastTime(bars, here) : bar.closesRepeat;
    const next = bars[here + 1];
    const comesBack = !inEnding || bar.closesRepeat > 1 || isOtherEnding(bar, next);
    here += 1;
    if (pass < times && comesBack) {
      pass += 1;
      here = start;
    } else if (bar.closesRepeat > 1 || (inEnding && !isInEnding(next))) {
      [start, pass, opened] = [here, 1, false];
    } else if (
      !opened &&
      !inEnding &&
      (next?.part !== bar.part || (bar.pickup && bar.closesPart))
    ) {
      start = here;
    }
  }
  return true;
}

const isInEnding = (bar: Bar | undefined): boolean => bar !== undefined && bar.endings.length > 0;

/** Whether `next` begins another ending than the one that `bar` is in. */
const isOtherEnding = (bar: Bar, next: Bar | undefined): boolean =>
  next !== undefined && isInEnding(next) && bar.endings.join() !== next.endings.join();

/** The highest number among the endings that stand side by side around `here`. */
function lastTime(bars: readonly Bar[], here: number): number {
  let from = here;
  while (isInEnding(bars[from - 1])) from -= 1;
  let highest = at(bars, here).closesRepeat;
  for (let i = from; isInEnding(bars[i]); i++) {
    highest = Math.max(highest, ...at(bars, i).endings);
  }
  return highest;
}

const samePitches = (a: NoteEvent, b: NoteEvent): boolean =>
  a.pitches.length === b.pitches.length &&
  a.pitches.every((p, i) => p.midi === at(b.pitches, i).midi);
