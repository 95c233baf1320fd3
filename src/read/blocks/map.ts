import type { BlockBase, BlockSpec } from './block-spec.ts';

/** The map of a tune's phrases. */
export interface MapBlock extends BlockBase {
  readonly kind: 'map';
  readonly of: string;
  /** Bars a phrase in this map alone; null for the tune's own. */
  readonly unit: number | null;
}

/** `::map{of=tune unit=4}`. */
export const map: BlockSpec<MapBlock, false> = {
  kind: 'map',
  form: 'leaf',
  name: 'map',
  attributes: ['of', 'unit'],
  required: [],
  isStudied: false,
  read({ place }, { values, tuneNamed }) {
    const of = tuneNamed();
    return of === null ? null : { kind: 'map', place, of, unit: values.count('unit', 16) };
  },
  about: block => [block.of],
};
