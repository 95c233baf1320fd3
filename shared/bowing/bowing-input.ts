import type { Performance, SoundedNote } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import type { Direction } from './bowing.ts';
import { type PartRun, runsInOrder } from './part-runs.ts';
import { type WrittenSlurs, writtenSlurs } from './written-slurs.ts';

/** Everything that determines the strokes of a tune: its slurs, stroke signs, gaps, restarts and anchors. */
export interface BowingInput {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly slurs: WrittenSlurs;
  /** For each event: whether it is slurred to the note written before it. */
  readonly joined: readonly boolean[];
  /** For each event: its stroke sign, if any. */
  readonly marks: readonly (Direction | null)[];
  /** For each sounded note: whether a rest or a breath comes before it. */
  readonly gaps: readonly boolean[];
  /** For each sounded note: whether the note played before it is also the one written before it. */
  readonly follows: readonly boolean[];
  /** Passes through the parts, in playing order. */
  readonly runs: readonly PartRun[];
  /** Sounded notes at which the alternation of strokes starts again; the first is always one. */
  readonly restarts: readonly number[];
  readonly start: Direction | null;
  /** Strokes of anchors, by their first event. */
  readonly anchored: ReadonlyMap<number, Direction>;
}

/** What a teacher states about the strokes besides the signs in the notes. */
export interface LayRequest {
  /** `start=`: the first stroke, where the teacher states it. */
  readonly start?: Direction | null;
  readonly restart?: 'part' | null;
  readonly anchored?: ReadonlyMap<number, Direction>;
}

/** Index of the last event of a sounded note: its last tied note, else itself. */
export const lastEvent = (note: SoundedNote): number => note.tied.at(-1) ?? note.event;

/** Gathers what determines the strokes of a tune. */
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
