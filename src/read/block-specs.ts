/** The blocks that a page may hold, by their form, each with the attributes it takes. */
export type BlockForm = 'container' | 'leaf' | 'text';

export interface BlockSpec {
  readonly attributes: readonly string[];
  readonly required: readonly string[];
  /** Attributes that may stand without a value. */
  readonly flags: readonly string[];
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
  'show',
] as const;

const spec = (
  attributes: readonly string[],
  required: readonly string[] = [],
  label: BlockSpec['label'] = 'none',
  flags: readonly string[] = [],
): BlockSpec => ({ attributes, required, label, flags });

const clipAttributes = ['src', 'link', 'of', 'at', 'start', 'tempo', 'learner', 'consent'] as const;

export const blockSpecs: Readonly<Record<BlockForm, Readonly<Record<string, BlockSpec>>>> = {
  container: {
    tune: spec(tuneAttributes),
    anchor: spec(['id', 'of', 'bars', 'start', 'hooks'], ['id', 'bars']),
    set: spec(['id', 'title'], ['id']),
    private: spec([]),
  },
  leaf: {
    tune: spec(['of', 'bars', 'show'], ['of']),
    plan: spec(['to', 'level', 'preset'], ['to']),
    map: spec(['of', 'unit']),
    drill: spec(['kind', 'of', 'to', 'level', 'seed'], ['kind']),
    clip: spec(clipAttributes, [], 'required', ['learner']),
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
