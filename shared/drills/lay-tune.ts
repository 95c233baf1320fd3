import { editedJoins } from '../bowing/apply-edit.ts';
import { type BowScore, bowScore } from '../bowing/bow-score.ts';
import type { Anchor, Edit } from '../bowing/bowing.ts';
import type { SetPassage } from '../bowing/find-lead-ins.ts';
import { type LaidStrokes, layScore } from '../bowing/lay-strokes.ts';
import { anchorFault, troublesOf } from '../bowing/troubles.ts';
import type { DrillSource } from './drill-source.ts';

/** A tune as the bow meets it, with what is wrong with it. */
export interface LaidTune {
  readonly score: BowScore;
  readonly laid: LaidStrokes;
  readonly passages: readonly SetPassage[];
  /** Keys of faults (see `troubles.ts`). */
  readonly faults: ReadonlySet<string>;
}

/** The strokes of a tune laid with one slur edit made in it; as it stands where the edit is null. */
export function layTune(source: DrillSource, edit: Edit | null): LaidTune {
  const { tune, performance, bowing, settings, start } = source;
  const passages = bowing.anchors;
  const plain = bowScore(tune, performance, {
    start,
    restart: settings.restart,
    anchored: new Map(passages.map(p => [p.first, p.direction])),
  });
  const score = edit ? { ...plain, joined: editedJoins(plain.joined, edit) } : plain;
  return laidTune(score, passages);
}

export function laidTune(score: BowScore, passages: readonly SetPassage[]): LaidTune {
  const laid = layScore(score);
  return { score, laid, passages, faults: troublesOf(score, laid, passages).faults };
}

/** Sounded notes at which an anchor is come to the wrong way. */
export const missedAt = (
  { score, laid, faults }: LaidTune,
  { first }: Pick<Anchor, 'first'>,
): number[] =>
  laid.reached
    .filter(
      r => score.performance.notes[r.note]?.event === first && faults.has(anchorFault(r.note)),
    )
    .map(r => r.note);
