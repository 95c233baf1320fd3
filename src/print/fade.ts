import { toNumber } from '../../shared/music/fraction.ts';
import { beatsOf } from '../../shared/music/meter.ts';
import { at } from '../../shared/must.ts';
import type { Study } from '../../shared/study.ts';
import type { ScoreCell } from '../engrave/score.ts';
import type { Shown } from './draw-row.ts';

/** Fewest notes that are shown at the start of a phrase. */
const startNotes = 3;
/** Room for the accidental and stem left of a note head, in drawing units. */
const leftOfHead = 5;

/**
 * What the second fading step shows: the first notes of each phrase, to the end of the beat with the third,
 * and every anchor. The rest is an empty staff, to be known by heart.
 */
export function phraseStarts(study: Study): Shown {
  return cell => {
    const { bowing } = study;
    const phrase = study.map.phrases[cell.phrase];
    const opens = phrase !== undefined && cell.bars[0] === phrase.bars[0];
    const start = opens ? [[0, startEdge(study, cell, startNotes)] as const] : [];
    const anchors = bowing.anchors.flatMap(({ first, last }) => {
      const inside = cell.notes.filter(n => first <= n.event && n.event <= last);
      const [left, right] = [inside[0], inside.at(-1)];
      if (!left || !right) return [];
      const next = cell.notes.find(n => n.event > right.event);
      const from = left === cell.notes[0] ? 0 : left.left - leftOfHead - 1;
      return [[from, next ? next.left - leftOfHead : cell.width] as const];
    });
    return [...start, ...anchors];
  };
}

/** What the fourth step shows: the first three notes of the tune; nothing of cells that do not hold its first bar. */
export const firstNotes = (cell: ScoreCell): ReturnType<Shown> => {
  if (!cell.bars.includes(0)) return [];
  const next = cell.notes[startNotes];
  return [[0, next ? next.left - leftOfHead : cell.width]];
};

/** Right edge of the start of a phrase, in drawing units: the first beat that begins after `enough` notes. */
function startEdge(study: Study, cell: ScoreCell, enough: number): number {
  const { tune } = study;
  const full = cell.notes.findIndex(n => !at(tune.bars, at(tune.events, n.event).bar).pickup);
  const beat = toNumber(beatsOf(tune.meter, tune));
  const next = cell.notes.find((n, i) => {
    if (i < Math.max(0, full) + enough) return false;
    const beats = toNumber(at(tune.events, n.event).onset) / beat;
    return Math.abs(beats - Math.round(beats)) < 1e-9;
  });
  return next ? next.left - leftOfHead : cell.width;
}
