import { limits } from '../limits.ts';
import { add, type Fraction, zero } from './fraction.ts';
import type { Performance, PlayedBar, SoundedNote } from './performance.ts';
import type { Bar, NoteEvent, Tune } from './tune.ts';

/**
 * Unrolls a tune: repeats, endings and the order of parts, then merges ties.
 *
 * A repeat goes back to `|:`; without one, to the start of its part (the last double bar that parts
 * the tune, or the last repeat's end), else to the start (ABC 2.1, section 4.8). On each time through, a bar that belongs to an ending is played only when the ending
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
    const bar = tune.bars[index] as Bar;
    const pass = (plays[index] ?? 0) + 1;
    plays[index] = pass;
    const first = notes.length;
    for (let e = bar.first; e < bar.end; e++) {
      const event = tune.events[e];
      if (!event) continue;
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
 * `longestPerformance` notes and rests.
 */
export function unroll(tune: Pick<Tune, 'bars' | 'parts' | 'order'>): {
  readonly bars: readonly number[];
  readonly cut: boolean;
} {
  const played: number[] = [];
  let events = 0;
  const play = (bar: number): boolean => {
    const b = tune.bars[bar];
    events += b ? b.end - b.first : 0;
    if (events > longestPerformance) return false;
    played.push(bar);
    return true;
  };
  const stretches = tune.order
    ? tune.order.map(part => tune.parts[part]?.bars ?? [])
    : [tune.bars.map((_, i) => i)];
  for (const stretch of stretches) {
    if (!unrollStretch(tune.bars, stretch, play)) return { bars: played, cut: true };
  }
  return { bars: played, cut: false };
}

/** Plays a list of bars with its repeats; false as soon as `play` refuses one. */
function unrollStretch(
  bars: readonly Bar[],
  stretch: readonly number[],
  play: (bar: number) => boolean,
): boolean {
  let start = 0;
  let pass = 1;
  let opened = false;
  let at = 0;
  while (at < stretch.length) {
    const index = stretch[at] as number;
    const bar = bars[index] as Bar;
    if (bar.opensRepeat && start !== at) {
      start = at;
      pass = 1;
    }
    if (bar.opensRepeat) opened = true;
    const inEnding = bar.endings.length > 0;
    if (inEnding && !bar.endings.includes(pass)) {
      at += 1;
      if (!stillEnding(bars, stretch, at)) [start, pass, opened] = [at, 1, false];
      continue;
    }
    if (!play(index)) return false;
    const times = inEnding ? lastTime(bars, stretch, at) : bar.closesRepeat;
    const comesBack = inEnding ? bar.closesRepeat > 1 || endsEnding(bars, stretch, at) : true;
    at += 1;
    if (pass < times && comesBack) {
      pass += 1;
      at = start;
    } else if (bar.closesRepeat > 1 || (inEnding && !stillEnding(bars, stretch, at))) {
      [start, pass, opened] = [at, 1, false];
    } else if (!opened && !inEnding && bars[stretch[at] ?? -1]?.part !== bar.part) {
      start = at;
    }
  }
  return true;
}

const stillEnding = (bars: readonly Bar[], stretch: readonly number[], at: number): boolean =>
  (bars[stretch[at] ?? -1]?.endings.length ?? 0) > 0;

/** The bar at `at` is the last of its ending, and another ending follows. */
function endsEnding(bars: readonly Bar[], stretch: readonly number[], at: number): boolean {
  const [here, next] = [bars[stretch[at] ?? -1], bars[stretch[at + 1] ?? -1]];
  return (
    next !== undefined && next.endings.length > 0 && here?.endings.join() !== next.endings.join()
  );
}

/** The highest number among the endings that stand side by side around `at`. */
function lastTime(bars: readonly Bar[], stretch: readonly number[], at: number): number {
  let highest = 1;
  let from = at;
  while (from > 0 && stillEnding(bars, stretch, from - 1)) from -= 1;
  for (let i = from; stillEnding(bars, stretch, i); i++) {
    highest = Math.max(highest, ...(bars[stretch[i] ?? -1]?.endings ?? []));
  }
  return Math.max(highest, bars[stretch[at] ?? -1]?.closesRepeat ?? 1);
}

const samePitches = (a: NoteEvent, b: NoteEvent): boolean =>
  a.pitches.length === b.pitches.length && a.pitches.every((p, i) => p.midi === b.pitches[i]?.midi);
