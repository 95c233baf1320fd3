import type { Root } from 'hast';
import type { BarRange } from '../../../shared/music/bar-range.ts';
import type { Direction } from '../../../shared/music/tune.ts';
import type { StandoutName } from '../../../shared/sections/standout-names.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** A passage with agreed notes and strokes. */
export interface AnchorBlock extends BlockBase {
  readonly kind: 'anchor';
  readonly id: string;
  readonly of: string;
  readonly bars: BarRange;
  readonly start: Direction | null;
  /** Which facts to show of what stands out in it; null where the teacher does not choose. */
  readonly standsOut: readonly StandoutName[] | null;
  /** What the teacher writes of the passage: why it is bowed so. */
  readonly body: Root;
}

/** `:::anchor{#id of=tune bars="A5-A6" start=down}` around the reason for it. */
export const anchor: BlockSpec<AnchorBlock, true> = {
  kind: 'anchor',
  form: 'container',
  name: 'anchor',
  attributes: ['id', 'of', 'bars', 'start', 'stands-out'],
  required: ['id', 'bars'],
  defines: 'anchor',
  isStudied: true,
  read({ place }, { id, values, content, tuneNamed, bodyOf }) {
    const of = tuneNamed();
    const bars = values.bars('bars');
    const start = values.direction('start');
    const standsOut = values.facts('stands-out');
    const body = bodyOf(content);
    return of && bars && id
      ? { kind: 'anchor', place, id, of, bars, start, standsOut, body }
      : null;
  },
  about: block => [block.of],
};
