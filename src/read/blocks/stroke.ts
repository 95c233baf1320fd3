import type { Direction } from '../../../shared/music/tune.ts';
import { nearest } from '../../../shared/nearest.ts';
import { problem } from '../../../shared/problem.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** The sign of a down-bow or an up-bow in running text. */
export interface StrokeBlock extends BlockBase {
  readonly kind: 'stroke';
  readonly direction: Direction;
}

/** `:stroke[up]`. */
export const stroke: BlockSpec<StrokeBlock, false> = {
  kind: 'stroke',
  form: 'text',
  name: 'stroke',
  attributes: [],
  required: [],
  label: true,
  isStudied: false,
  read({ place, label }, { problems }) {
    const written = label?.trim() ?? '';
    if (written === 'up' || written === 'down') {
      return { kind: 'stroke', place, direction: written };
    }
    if (written !== '') {
      const expected = ['up', 'down'];
      const rest = { actual: written, expected, nearest: nearest(written, expected) };
      problems.push(problem('stroke-unknown', place, rest));
    }
    return null;
  },
  about: () => [],
};
