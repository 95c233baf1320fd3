import { type Level, levels } from '../../../shared/bowing/settings.ts';
import { type DrillKind, drillKinds } from '../../../shared/drills/drill.ts';
import { problem } from '../../../shared/problem.ts';
import { unknownName } from '../book-names.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';

/** A drill on a tune, with its answer. */
export interface DrillBlock extends BlockBase {
  readonly kind: 'drill';
  readonly drill: DrillKind;
  readonly of: string;
  /** The anchor of that tune that the drill is about; null where the drill may choose. */
  readonly to: string | null;
  /** null for the level of the book. */
  readonly level: Level | null;
  /** The same seed gives the same drill. */
  readonly seed: number;
}

/** Greatest seed that a drill may have. */
const mostSeeds = 9999;

/** `::drill{kind=gaps of=tune to=anchor}`; without `of` it is on the tune of its anchor. */
export const drill: BlockSpec<DrillBlock, true> = {
  kind: 'drill',
  form: 'leaf',
  name: 'drill',
  attributes: ['kind', 'of', 'to', 'level', 'seed'],
  required: ['kind'],
  isStudied: true,
  read({ place, values: written }, { values, names, problems, tuneNamed }) {
    const to = values.text('to');
    const anchored = to === null ? undefined : names.anchorOf.get(to);
    const of = written.of ? tuneNamed() : (anchored ?? tuneNamed());
    const kind = values.oneOf('kind', drillKinds);
    const level = values.oneOf('level', levels);
    const seed = values.count('seed', mostSeeds) ?? 1;
    const at = written.to?.place ?? place;
    if (to !== null && !names.anchors.has(to)) {
      problems.push(unknownName('anchor', to, at, names.anchors));
      return null;
    }
    if (to !== null && anchored !== undefined && of !== null && anchored !== of) {
      const facts = { anchor: to, tune: of };
      const rest = { facts, actual: to, expected: [anchored] };
      problems.push(problem('drill-anchor', at, rest));
      return null;
    }
    if (kind === null || of === null) return null;
    return { kind: 'drill', place, drill: kind, of, to, level, seed };
  },
  about: block => [block.of],
};
