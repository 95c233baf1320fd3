import type { StagedFile } from './stage-file.ts';

/** What a file holds. */
export type Content = string | Uint8Array;

/**
 * A file of the site, by its path from the site's root with forward slashes: what it holds, a file to
 * copy, how to make it, or that another thread has staged it. What is to be made has the hash of all
 * that it is made from, and is made again only when that hash is another than at the last build, or the
 * file is not as it was left.
 */
export type SiteFile =
  | { readonly path: string; readonly content: Content }
  | { readonly path: string; readonly copyOf: string }
  | {
      readonly path: string;
      readonly inputHash: string;
      readonly make: () => Content | Promise<Content>;
    }
  | { readonly path: string; readonly inputHash: string; readonly staged: StagedFile };
