import type { Performance, SoundedNote } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import type { Direction } from './bowing.ts';
import { type PartRun, runsInOrder } from './part-runs.ts';
import { type WrittenSlurs, writtenSlurs } from './written-slurs.ts';

/** What the strokes of a tune are laid from: its slurs, its signs, its gaps, where strokes start anew. */
export interface BowingInput {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly slurs: WrittenSlurs;
  /** For each event: slurred to its written predecessor. */
  readonly joined: readonly boolean[];
  /** For each event: the sign on it. */
  readonly marks: readonly (Direction | null)[];
  /** For each sounded note: a rest or a breath stands before it. */
  readonly gaps: readonly boolean[];
  /** For each sounded note: the note played before it is the one written before it. */
  readonly follows: readonly boolean[];
  /** Times through the parts, in played order. */
  readonly runs: readonly PartRun[];
  /** Sounded notes at which the strokes start anew, the first of all included. */
  readonly restarts: readonly number[];
  readonly start: Direction | null;
  /** Strokes of anchors, by the event that each begins with. */
  readonly anchored: ReadonlyMap<number, Direction>;
}

/** What is stated of the strokes besides the signs in the notes. */
export interface LayRequest {
  /** `start=`: the first stroke, where the teacher says it. */
  readonly start?: Direction | null;
  readonly restart?: 'part' | null;
  readonly anchored?: ReadonlyMap<number, Direction>;
}

/** Event index of the last written note of a sounded one. */
export const lastEvent = (note: SoundedNote): number => note.tied.at(-1) ?? note.event;

/** Gathers what the strokes of a tune are laid from; made once for a tune. */
export function bowingInput(
  tune: Tune,
  performance: Performance,
  request: LayRequest = {},
): BowingInput {
  const slurs = writtenSlurs(tune);
  const { notes, bars } = performance;
  const restarts = [0];
  if (request.restart === 'part') {
    bars.forEach((played, i) => {
      const part = tune.parts[tune.bars[played.bar]?.part ?? -1];
      if (i > 0 && part?.bars[0] === played.bar && played.first > (restarts.at(-1) ?? 0)) {
        restarts.push(played.first);
      }
    });
  }
  return {
    tune,
    performance,
    slurs,
    joined: slurs.joined,
    marks: tune.events.map(e => (e.kind === 'note' ? e.mark : null)),
    gaps: notes.map(n => n.afterGap),
    follows: notes.map((n, k) => {
      const before = notes[k - 1];
      return before !== undefined && slurs.previous[n.event] === lastEvent(before);
    }),
    runs: runsInOrder(tune, performance),
    restarts: restarts.filter(k => k < notes.length),
    start: request.start ?? null,
    anchored: request.anchored ?? new Map(),
  };
}
