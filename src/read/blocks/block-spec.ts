import type { Root } from 'hast';
import type { RootContent } from 'mdast';
import type { Place, Problem } from '../../../shared/problem.ts';
import type { ValueReader } from '../attribute-values.ts';
import type { BookNames } from '../book-names.ts';
import type { BookSettings } from '../book-settings.ts';
import type { BlockForm, Directive } from '../directive.ts';
import type { TuneSeed } from '../page-names.ts';
import type { FrontMatter } from '../read-front-matter.ts';
import type { SourceText } from '../source-text.ts';

/** What every block of a page has. */
export interface BlockBase {
  readonly kind: string;
  readonly place: Place;
  /** Ids of the tunes that the block names, by itself or by an anchor. */
  readonly about: readonly string[];
  /** The block stands inside a private note: nothing outside that note may mention it. */
  readonly hidden?: true;
}

/** A block as its reader returns it, before `about` and `hidden` are added. */
export type ReadBlock<B extends BlockBase> = Omit<B, 'about' | 'hidden'>;

/**
 * Everything the program knows about one kind of block when it reads a book. `IsStudied` is a type
 * parameter so that the list of studied blocks is known to the compiler.
 */
export interface BlockSpec<B extends BlockBase, IsStudied extends boolean = boolean> {
  readonly kind: B['kind'];
  readonly form: BlockForm;
  /** As it is written after the colons. */
  readonly name: string;
  readonly attributes: readonly string[];
  readonly required: readonly string[];
  /** Attributes that may stand without a value. */
  readonly flags?: readonly string[];
  /** Words in brackets must follow the name; without it there may be none. */
  readonly label?: true;
  /** What the block defines, under a name that any page of the book may use. */
  readonly defines?: 'tune' | 'anchor' | 'set';
  /** The studies of its tunes hold what it shows, so that a change of the block makes them be computed again. */
  readonly isStudied: IsStudied;
  /** Reads the block; null where it cannot be read, with the reason among `problems`. */
  readonly read: (directive: Directive, context: BlockContext) => ReadBlock<B> | null;
  /** Ids of the tunes that the block names, by itself or by an anchor. */
  about(block: ReadBlock<B>, names: BookNames): readonly string[];
}

/** What a block's reader is given besides the directive. */
export interface BlockContext {
  readonly source: SourceText;
  readonly front: FrontMatter;
  readonly settings: BookSettings;
  readonly names: BookNames;
  readonly values: ValueReader;
  /** The reader adds its problems here. */
  readonly problems: Problem[];
  /** What stands in a container, as Markdown; empty in the other forms. */
  readonly content: readonly RootContent[];
  /** The name that the block defines, if it is an anchor or a set; null where it has none. */
  readonly id: string | null;
  /** The tune that the block defines; null where it defines none or its ABC is missing. */
  readonly seed: TuneSeed | null;
  /** Makes a body of some content; `isPrivate` where it stands in a private note. */
  readonly bodyOf: (content: readonly RootContent[], isPrivate?: true) => Root;
  /** Id of the tune that `of` names, else of the one above. Null, and a problem, where there is not just one. */
  readonly tuneNamed: () => string | null;
  /** Sets the tunes that the following blocks are about where they name none. */
  readonly putAbove: (tunes: readonly string[]) => void;
}
