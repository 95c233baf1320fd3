import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';

/**
 * The slurs of a tune by junction. A junction is between a note and the note written before it. Nested slurs
 * make one stroke, so it matters only whether any slur covers a junction: `(c d (e) f g a)` joins all six.
 *
 * A slur does not cross a repeat sign, since passes differ in what is played next. It may reach from the body
 * of a repeat into its first ending; a later ending that closes a slur which it did not open then continues
 * the same one: `(A|1 B) … :|2 c)`.
 */
export interface WrittenSlurs {
  /** For each event: whether a slur covers the junction to its `previous` note. */
  readonly joined: readonly boolean[];
  /** For each event: the note written before it, -1 for none. A later ending follows the body. */
  readonly previous: readonly number[];
  /** For each event: number of slurs that open or close on it and have no partner. */
  readonly unmatched: readonly { readonly opened: number; readonly closed: number }[];
}

/** Finds the slurred junctions of a tune. Problems with slurs as written are found in reading the ABC. */
export function writtenSlurs(tune: Tune): WrittenSlurs {
  const { previous, hard } = predecessors(tune);
  const joined = tune.events.map(() => false);
  const unmatched = tune.events.map(() => ({ opened: 0, closed: 0 }));
  const stack: number[] = [];
  /** First notes of endings that follow a body, and whether a slur came into the first of them. */
  const carried = new Set<number>();

  const join = (open: number, close: number): void => {
    for (let e = close; e > open; e = at(previous, e)) {
      const before = at(previous, e);
      if (before < 0) break;
      if (hard[e]) continue;
      joined[e] = true;
      if (isEnding(tune, e) && !isEnding(tune, before)) carried.add(before);
    }
  };

  tune.events.forEach((event, e) => {
    if (event.kind !== 'note') return;
    for (let i = 0; i < event.slursOpened; i++) stack.push(e);
    for (let i = 0; i < event.slursClosed; i++) {
      const open = stack.pop();
      if (open !== undefined) {
        if (open !== e) join(open, e);
        continue;
      }
      const body = bodyBefore(tune, previous, e);
      if (body >= 0 && carried.has(body)) {
        for (let n = e; n > body; n = at(previous, n)) joined[n] = true;
      } else {
        at(unmatched, e).closed++;
      }
    }
  });
  for (const e of stack) at(unmatched, e).opened++;
  return { joined, previous, unmatched };
}

const isEnding = (tune: Tune, e: number): boolean =>
  at(tune.bars, at(tune.events, e).bar).endings.length > 0;

/** The last note of the body before the ending that contains note e; -1 outside later endings. */
function bodyBefore(tune: Tune, previous: readonly number[], e: number): number {
  let n = e;
  while (n >= 0 && isEnding(tune, n)) n = at(previous, n);
  return n === e ? -1 : n;
}

/** For each event: the note written before it, and whether a repeat sign separates them. */
function predecessors(tune: Tune): { previous: number[]; hard: boolean[] } {
  const previous = tune.events.map(() => -1);
  const hard = tune.events.map(() => false);
  let last = -1;
  let body = -1;
  let cut = false;
  tune.bars.forEach((bar, b) => {
    const before = tune.bars[b - 1];
    const opensEnding =
      bar.endings.length > 0 && bar.endings.join() !== (before?.endings ?? []).join();
    if (opensEnding && (before?.endings.length ?? 0) === 0) body = last;
    if (opensEnding && (before?.endings.length ?? 0) > 0) {
      last = body;
      cut = false;
    }
    if (bar.opensRepeat) cut = true;
    for (let e = bar.first; e < bar.end; e++) {
      if (tune.events[e]?.kind !== 'note') continue;
      previous[e] = last;
      hard[e] = cut;
      cut = false;
      last = e;
    }
    if (bar.closesRepeat > 1) cut = true;
  });
  return { previous, hard };
}
