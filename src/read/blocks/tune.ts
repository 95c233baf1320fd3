import type { Root } from 'hast';
import type { Tuning } from '../../../shared/fingering/fingering.ts';
import { type Direction, type TuneType, tuneTypes } from '../../../shared/music/tune.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import type { Rights } from '../../../shared/rights.ts';
import type { LabelRequest } from '../../../shared/sections/phrase-labels.ts';
import { type Fence, isAbcFence } from '../abc-fence.ts';
import { valueReader } from '../attribute-values.ts';
import type { BookSettings } from '../book-settings.ts';
import type { Directive } from '../directive.ts';
import type { TuneSeed } from '../page-names.ts';
import type { FrontMatter, TuneFacts } from '../read-front-matter.ts';
import { rightsNames, rightsOf } from '../rights.ts';
import { shownBy } from '../show.ts';
import type { BlockBase, BlockSpec, ReadBlock } from './block-spec.ts';

/** Defines a tune. */
export interface TuneBlock extends BlockBase {
  readonly kind: 'tune';
  readonly id: string;
  readonly abc: Fence;
  readonly rights: Rights | null;
  /** Who it was learned from, and where. */
  readonly learnedFrom: string | null;
  readonly version: string | null;
  readonly type: TuneType | null;
  readonly start: Direction | null;
  readonly restart: 'part' | null;
  readonly tuning: Tuning | null;
  readonly unit: number | null;
  /** The teacher's own labels for the phrases; null for computed ones. */
  readonly labels: LabelRequest | null;
  /** `show=ear`: by ear first, the notation hidden until it is asked for. */
  readonly byEar: boolean;
  /** The story around the fence. */
  readonly body: Root;
}

/** `:::tune{#id rights=own}` around a fence of ABC and its story. A fence on its own makes the same block. */
export const tune: BlockSpec<TuneBlock, false> = {
  kind: 'tune',
  form: 'container',
  name: 'tune',
  attributes: [
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
  ],
  required: [],
  defines: 'tune',
  isStudied: false,
  read(_, { seed, content, bodyOf, putAbove, front, settings }) {
    if (seed) putAbove([seed.id]);
    const story = bodyOf(content.filter(child => !isAbcFence(child)));
    return seed && tuneBlock(seed, front, settings, story);
  },
  about: block => [block.id],
};

/**
 * Makes the block of a tune. A fact is taken from the tune's own block, else from the front matter of
 * its page; rights that neither has are the book's.
 */
export function tuneBlock(
  { id, place, abc, facts }: TuneSeed,
  front: FrontMatter,
  settings: BookSettings,
  body: Root,
): ReadBlock<TuneBlock> {
  const [from] = [facts, front].filter(f => f.rights !== undefined || f.permission !== undefined);
  return {
    kind: 'tune',
    place,
    id,
    abc,
    rights: from ? rightsOf(from.rights, from.permission) : settings.rights,
    learnedFrom: facts['learned-from'] ?? front['learned-from'] ?? null,
    version: facts.version ?? front.version ?? null,
    type: facts.type ?? front.type ?? null,
    start: facts.start ?? front.start ?? null,
    restart: facts.restart ?? front.restart ?? null,
    tuning: facts.tuning ?? front.tuning ?? null,
    unit: facts.unit ?? front.unit ?? null,
    labels: facts.labels ?? front.labels ?? null,
    byEar: (facts.show ?? front.show) === 'ear',
    body,
  };
}

/** Reads the attributes of `:::tune{…}` as facts about its tune. */
export function tuneFacts(directive: Directive, problems: Problem[]): TuneFacts {
  const values = valueReader(directive, problems);
  const permission = values.text('permission') ?? undefined;
  const rights = values.oneOf('rights', rightsNames) ?? undefined;
  if (permission !== undefined && rights !== undefined) {
    problems.push(problem('rights-twice', directive.values.permission?.place ?? directive.place));
  }
  return {
    rights,
    permission,
    'learned-from': values.text('learned-from') ?? undefined,
    version: values.text('version') ?? undefined,
    type: values.oneOf<TuneType>('type', tuneTypes) ?? undefined,
    start: values.direction('start') ?? undefined,
    restart: values.oneOf('restart', ['part'] as const) ?? undefined,
    tuning: values.tuning('tuning') ?? undefined,
    unit: values.count('unit', 16) ?? undefined,
    labels: values.labels('labels') ?? undefined,
    show: values.oneOf('show', shownBy) ?? undefined,
  };
}
