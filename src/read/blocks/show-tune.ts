import type { BarRange } from '../../../shared/music/bar-range.ts';
import { shownBy } from '../show.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** Shows a tune defined elsewhere. `of` is known to name a tune of the book. */
export interface ShowTuneBlock extends BlockBase {
  readonly kind: 'show-tune';
  readonly of: string;
  readonly bars: BarRange | null;
  readonly byEar: boolean;
}

/** `::tune{of=id bars="A1-A4"}`. */
export const showTune: BlockSpec<ShowTuneBlock, false> = {
  kind: 'show-tune',
  form: 'leaf',
  name: 'tune',
  attributes: ['of', 'bars', 'show'],
  required: ['of'],
  isStudied: false,
  read({ place }, { values, front, tuneNamed, putAbove }) {
    const of = tuneNamed();
    if (of === null) return null;
    putAbove([of]);
    const byEar = (values.oneOf('show', shownBy) ?? front.show) === 'ear';
    return { kind: 'show-tune', place, of, byEar, bars: values.bars('bars') };
  },
  about: block => [block.of],
};
