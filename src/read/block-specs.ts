/** The blocks that a page may hold, by their form, each with the attributes it takes. */
export type BlockForm = 'container' | 'leaf' | 'text';

export interface BlockSpec {
  readonly attributes: readonly string[];
  readonly required: readonly string[];
  /** Whether words in brackets follow the name. */
  readonly label: 'none' | 'required';
}

const tuneAttributes = [
  'id',
  'rights',
  'permission',
  'learned-from',
  'version',
  'type',
  'start',
  'restart',
  'tuning',
  'unit',
  'labels',
] as const;

const spec = (
  attributes: readonly string[],
  required: readonly string[] = [],
  label: BlockSpec['label'] = 'none',
): BlockSpec => ({ attributes, required, label });

export const blockSpecs: Readonly<Record<BlockForm, Readonly<Record<string, BlockSpec>>>> = {
  container: {
    tune: spec(tuneAttributes),
    anchor: spec(['id', 'of', 'bars', 'start', 'hooks'], ['id', 'bars']),
    private: spec([]),
  },
  leaf: {
    tune: spec(['of', 'bars'], ['of']),
    plan: spec(['to', 'level', 'preset'], ['to']),
    map: spec(['of']),
  },
  text: {
    stroke: spec([], [], 'required'),
    notes: spec(['from'], [], 'required'),
  },
};

const signs: Readonly<Record<BlockForm, string>> = { container: ':::', leaf: '::', text: ':' };

/** `:::anchor`, `::plan`, `:stroke`. */
export const blockSign = (form: BlockForm, name: string): string => `${signs[form]}${name}`;

/** Every block as it is written. */
export const allBlockSigns: readonly string[] = (['container', 'leaf', 'text'] as const).flatMap(
  form => Object.keys(blockSpecs[form]).map(name => blockSign(form, name)),
);
