/**
 * The files that the service worker keeps of a site, and the messages between it and the pages. Maps
 * from a file's path, relative to the site's root, to the SHA-256 of its content, in hex.
 */
export interface KeptSite {
  /** Files that every reader needs: pages, scripts, styles, fonts. */
  readonly files: Readonly<Record<string, string>>;
  /** Recordings, kept only if the student asks for them. */
  readonly recordings: Readonly<Record<string, string>>;
  /** Bytes of all recordings together. */
  readonly recordingBytes: number;
}

/** A message from a page to the worker. `say` asks for the state. */
export type KeepingOrder =
  | { readonly order: 'say' }
  | { readonly order: 'recordings'; readonly keep: boolean }
  /** Activates the waiting version. */
  | { readonly order: 'take-over' };

/** A message from the worker to a page, in answer to an order. */
export interface KeepingState {
  /** Bytes of all recordings of the book, 0 where it has none. */
  readonly recordingBytes: number;
  readonly recordings: 'kept' | 'not-kept' | 'failed';
}
