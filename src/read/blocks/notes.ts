import type { Direction } from '../../../shared/music/tune.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** A note chain in running text, drawn with strings, fingers and strokes. */
export interface NotesBlock extends BlockBase {
  readonly kind: 'notes';
  /** The ABC as written between the brackets. */
  readonly abc: string;
  readonly from: Direction | null;
}

/** `:notes[A (Bc) d]{from=up}`. */
export const notes: BlockSpec<NotesBlock, false> = {
  kind: 'notes',
  form: 'text',
  name: 'notes',
  attributes: ['from'],
  required: [],
  label: true,
  isStudied: false,
  read({ place, label }, { values }) {
    // A label may run on to a second line, which in a quotation begins with its sign.
    const abc = label?.replace(/\s*\n[\s>]*/g, ' ').trim() ?? '';
    const from = values.direction('from');
    return abc === '' ? null : { kind: 'notes', place, abc, from };
  },
  about: () => [],
};
