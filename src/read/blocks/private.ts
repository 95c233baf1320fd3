import type { Root } from 'hast';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** A note for the teacher alone. */
export interface PrivateBlock extends BlockBase {
  readonly kind: 'private';
  readonly body: Root;
}

/** `:::private` around anything. */
export const privateNote: BlockSpec<PrivateBlock, false> = {
  kind: 'private',
  form: 'container',
  name: 'private',
  attributes: [],
  required: [],
  isStudied: false,
  read: ({ place }, { content, bodyOf }) => ({
    kind: 'private',
    place,
    body: bodyOf(content, true),
  }),
  about: () => [],
};
