import type { StagedFile } from './stage-file.ts';

/** Content of a file. */
export type Content = string | Uint8Array;

/**
 * A file of the site. `path` is from the site's root, with forward slashes. Its content is given, copied
 * from another file, made by a function, or staged already by another thread. A file with a function
 * has the hash of all its inputs: `make` is called only where the hash differs from the last build's,
 * or the file has been changed since.
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
