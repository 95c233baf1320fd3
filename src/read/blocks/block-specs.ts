import { type BlockForm, blockSign } from '../directive.ts';
import { anchor } from './anchor.ts';
import type { BlockBase, BlockSpec } from './block-spec.ts';
import { clip } from './clip.ts';
import { drill } from './drill.ts';
import { map } from './map.ts';
import { notes } from './notes.ts';
import { plan } from './plan.ts';
import { privateNote } from './private.ts';
import { set } from './set.ts';
import { showTune } from './show-tune.ts';
import { stroke } from './stroke.ts';
import { tune } from './tune.ts';

/** Every kind of block that a page may hold, in the order in which messages name them. */
export const blockSpecs = [
  tune,
  anchor,
  set,
  privateNote,
  showTune,
  plan,
  map,
  drill,
  clip,
  stroke,
  notes,
] as const;

type Spec = (typeof blockSpecs)[number];

type BlockIn<S> = S extends BlockSpec<infer B> ? B : never;

/** A block of a page. Containers hold a body of their own, whose marks point into the page's blocks too. */
export type Block = BlockIn<Spec>;

/** The kinds of block, such as `tune` and `anchor`. */
export type BlockKind = Block['kind'];

/** The block of a kind. */
export type BlockOf<K extends BlockKind> = Extract<Block, { readonly kind: K }>;

/** A block that needs the study of its tune. */
type StudiedBlock = BlockIn<Extract<Spec, { readonly isStudied: true }>>;

const specs: readonly BlockSpec<BlockBase>[] = blockSpecs;

const bySign = new Map(specs.map(spec => [blockSign(spec.form, spec.name), spec] as const));

/** Every block as it is written. */
export const allBlockSigns: readonly string[] = [...bySign.keys()];

/** Names of the blocks of a form. */
export const blockNames = (form: BlockForm): readonly string[] =>
  specs.filter(spec => spec.form === form).map(spec => spec.name);

/** The block of a form and a name; undefined where there is none. */
export const specNamed = (form: BlockForm, name: string): BlockSpec<BlockBase> | undefined =>
  bySign.get(blockSign(form, name));

/** Blocks whose content is computed in the study of one tune, by kind. */
export type StudiedBlocks = { readonly [K in StudiedBlock['kind']]: readonly BlockOf<K>[] };
