import type { Place } from '../../shared/problem.ts';
import type { Fence } from './abc-fence.ts';
import type { TuneFacts } from './read-front-matter.ts';

/** What a page is, by the folder that it stands in. */
export type PageKind = 'lesson' | 'tune' | 'page';

/** Names that a page defines, and its own. */
export interface PageNames {
  readonly kind: PageKind;
  readonly file: string;
  readonly slug: string;
  /** Its front matter says that the page is unfinished. */
  readonly isUnfinished: boolean;
  readonly target: LinkTarget;
  readonly tunes: readonly TitledTune[];
  readonly anchors: readonly AnchorSeed[];
  readonly sets: readonly SetSeed[];
}

/** A page as the target of links. */
export interface LinkTarget {
  /** null for a tune page without tunes, which has no page in the site. */
  readonly sitePath: string | null;
  /** Names of its headings. */
  readonly headings: ReadonlySet<string>;
}

/** A tune that a page defines, with the slug that links to it may name. */
export interface TitledTune extends Pick<TuneSeed, 'id' | 'place'> {
  /** Slug of its title; empty where it has none. */
  readonly title: string;
}

/** A tune that a page defines, by a `:::tune` or by a fence on its own. */
export interface TuneSeed {
  readonly id: string;
  readonly place: Place;
  readonly abc: Fence;
  readonly facts: TuneFacts;
}

/** An anchor that a page defines. */
export interface AnchorSeed {
  readonly id: string;
  readonly place: Place;
  /** Id of the tune in its `of`, else of the one above it; null where there is not just one. */
  readonly of: string | null;
}

/** A set that a page defines. */
export interface SetSeed {
  readonly id: string;
  readonly place: Place;
}
