import { measureText } from '../../shared/engraving/measure-text.ts';
import type { DrawnCell } from './draw-cell.ts';
import type { Shape } from './drawing-surface.ts';
import { staffTop } from './note-places.ts';

export const chordSize = 14;
/** Height of a second row, where symbols would run into one another in one. */
export const chordLane = 14;
const air = 3;

/** Chord symbols and words above the staff have rows of their own. */
export function isAbove(shape: Shape): boolean {
  const name = shape.getAttribute('data-name');
  return (name === 'chord' || name === 'annotation') && Number(shape.attributes.y) < staffTop;
}

/** A chord symbol or word: its middle, and its row, 0 the lowest. */
export interface PlacedChord {
  readonly text: string;
  readonly x: number;
  readonly lane: number;
}

/**
 * Each in the lowest row in which it keeps clear of those before it. Words that abcjs sets from their
 * left end are set so here too; nothing begins before the cell.
 */
export function placeChords(chords: readonly Shape[]): readonly PlacedChord[] {
  const edges: number[] = [];
  return chords.map(({ text, attributes }) => {
    const words = text.replaceAll('\n', ' ');
    const half = measureText(words, chordSize).width / 2;
    const middle = attributes['text-anchor'] === 'middle' ? 0 : half;
    const x = Math.max(half + 1, Number(attributes.x) + middle);
    let lane = 0;
    while ((edges[lane] ?? Number.NEGATIVE_INFINITY) + air > x - half) lane++;
    edges[lane] = x + half;
    return { text: words, x, lane };
  });
}

/** How many rows the symbols of a cell take. */
export function chordLanes({ elements, shapeOf }: DrawnCell): number {
  const above = elements
    .filter(e => e.type !== 'part')
    .flatMap(e => shapeOf.get(e)?.children.filter(isAbove) ?? []);
  return Math.max(0, ...placeChords(above).map(c => c.lane + 1));
}
