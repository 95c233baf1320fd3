import { type Level, levels } from '../../../shared/bowing/settings.ts';
import { unknownName } from '../book-names.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** The ways to reach an anchor. */
export interface PlanBlock extends BlockBase {
  readonly kind: 'plan';
  /** Id of an anchor of the book. */
  readonly to: string;
  readonly level: Level | null;
  readonly preset: string | null;
}

/** `::plan{to=anchor level=improver preset=reel}`. */
export const plan: BlockSpec<PlanBlock, true> = {
  kind: 'plan',
  form: 'leaf',
  name: 'plan',
  attributes: ['to', 'level', 'preset'],
  required: ['to'],
  isStudied: true,
  read({ place, values: written }, { values, names, problems }) {
    const to = values.text('to');
    const level = values.oneOf('level', levels);
    const preset = values.oneOf('preset', names.presets);
    if (to === null) return null;
    if (names.anchors.has(to)) return { kind: 'plan', place, to, level, preset };
    problems.push(unknownName('anchor', to, written.to?.place ?? place, names.anchors));
    return null;
  },
  about: ({ to }, { anchorOf }) => [anchorOf.get(to) ?? []].flat(),
};
