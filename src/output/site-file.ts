import type { StagedFile } from './stage-file.ts';

/** What a file holds; a long text may be in pieces. */
export type Content = string | readonly string[] | Uint8Array;

/**
 * A file of the site, by its path from the site's root with forward slashes: what it holds, a file to
 * copy, how to make it, or that another thread has staged it. What is to be made says what it is made
 * `from`, as one string, and is made again only when that string is another than at the last build, or
 * the file is not as it was left.
 */
export type SiteFile =
  | { readonly path: string; readonly content: Content }
  | { readonly path: string; readonly copyOf: string }
  | {
      readonly path: string;
      readonly from: string;
      readonly make: () => Content | Promise<Content>;
    }
  | { readonly path: string; readonly from: string; readonly staged: StagedFile };
