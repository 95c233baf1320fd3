import { editedJoins } from '../bowing/apply-edit.ts';
import type { Anchor, Edit } from '../bowing/bowing.ts';
import { type BowingInput, bowingInput } from '../bowing/bowing-input.ts';
import type { SetPassage } from '../bowing/find-lead-ins.ts';
import { type LaidStrokes, layScore } from '../bowing/lay-strokes.ts';
import { anchorFault, troublesOf } from '../bowing/troubles.ts';
import { at } from '../must.ts';
import type { DrillSource } from './drill-source.ts';

/** The strokes of a whole tune as laid, and which of its anchors they miss. */
export interface LaidBowing {
  readonly score: BowingInput;
  readonly laid: LaidStrokes;
  readonly passages: readonly SetPassage[];
  /** Keys of faults (see `troubles.ts`). */
  readonly faults: ReadonlySet<string>;
}

/**
 * Lays the strokes of the whole tune, every time through, with one slur edit made in it; null makes
 * none.
 */
export function layWithEdit(source: DrillSource, edit: Edit | null): LaidBowing {
  const { tune, performance, bowing, settings, start } = source;
  const passages = bowing.anchors;
  const plain = bowingInput(tune, performance, {
    start,
    restart: settings.restart,
    anchored: new Map(passages.map(p => [p.first, p.direction])),
  });
  const score = edit ? { ...plain, joined: editedJoins(plain.joined, edit) } : plain;
  return layBowing(score, passages);
}

/** Lays the strokes of a score and looks for what is wrong with them. */
export function layBowing(score: BowingInput, passages: readonly SetPassage[]): LaidBowing {
  const laid = layScore(score);
  return { score, laid, passages, faults: troublesOf(score, laid, passages).faults };
}

/** Sounded notes at which the tune reaches an anchor on the wrong stroke, one for each time through. */
export const missedAt = (
  { score, laid, faults }: LaidBowing,
  { first }: Pick<Anchor, 'first'>,
): number[] =>
  laid.reached
    .filter(
      r => at(score.performance.notes, r.note).event === first && faults.has(anchorFault(r.note)),
    )
    .map(r => r.note);
