/** What a file holds. */
export type Content = string | Uint8Array;

/**
 * A file of the site, by its path from the site's root with forward slashes: what it holds, a file
 * to copy, or how to make it. What is to be made says what it is made `from`, as one string, and is
 * made again only when that string is another than at the last build, or the file is not as it was left.
 */
export type SiteFile =
  | { readonly path: string; readonly content: Content }
  | { readonly path: string; readonly copyOf: string }
  | {
      readonly path: string;
      readonly from: string;
      readonly make: () => Content | Promise<Content>;
    };

/** Says where a folder cannot be written, or a file to copy is gone: the book's trouble, not ours. */
export class SiteTrouble extends Error {
  constructor(
    readonly rule: 'site-unwritable' | 'source-gone',
    readonly path: string,
    reason: string,
  ) {
    super(reason);
  }
}
