import type { Root } from 'hast';
import type { Problem } from '../../shared/problem.ts';
import type { Block } from './blocks/block-specs.ts';
import type { BookSettings } from './book-settings.ts';
import type { PageHashes } from './page-hash.ts';
import type { PageKind } from './page-names.ts';

export type { AnchorBlock } from './blocks/anchor.ts';
export type {
  Block,
  BlockKind,
  BlockOf,
  StudiedBlocks,
} from './blocks/block-specs.ts';
export type { ClipBlock } from './blocks/clip.ts';
export type { DrillBlock } from './blocks/drill.ts';
export type { MapBlock } from './blocks/map.ts';
export type { NotesBlock } from './blocks/notes.ts';
export type { PlanBlock } from './blocks/plan.ts';
export type { PrivateBlock } from './blocks/private.ts';
export type { SetBlock } from './blocks/set.ts';
export type { ShowTuneBlock } from './blocks/show-tune.ts';
export type { TuneBlock } from './blocks/tune.ts';
export type { BookSettings, Theme } from './book-settings.ts';

/** A book as read from its files and checked. */
export interface Book {
  /** Folder of the book. */
  readonly root: string;
  readonly settings: BookSettings;
  /** Newest lesson first. */
  readonly lessons: readonly Page[];
  readonly tunePages: readonly Page[];
  readonly pages: readonly Page[];
  /** Paths of media files, from the book's folder, with forward slashes. */
  readonly media: readonly string[];
  /** Those of `media` that nothing published refers to. */
  readonly privateMedia: readonly string[];
  readonly problems: readonly Problem[];
}

/** One Markdown file. */
export interface Page {
  readonly kind: PageKind;
  /** From the book's folder, with forward slashes: `lessons/2026-09-15-first-evening.md`. */
  readonly file: string;
  /** Its name in links: `2026-09-15-first-evening`. */
  readonly slug: string;
  readonly title: string;
  /** `2026-09-15`, of lessons. */
  readonly date: string | null;
  /** Its front matter says that it is unfinished: only a book read with its unfinished pages has it. */
  readonly unfinished?: true;
  readonly summary: string | null;
  /**
   * The body, sanitised, with an element `bow-block` (property `dataBlock`, an index as string
   * into `blocks`) where each block stands.
   */
  readonly body: Root;
  readonly blocks: readonly Block[];
  readonly hashes: PageHashes;
}
