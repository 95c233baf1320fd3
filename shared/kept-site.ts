/**
 * What the service worker keeps of a site, and what it and the pages say to each other. Every file
 * is known by its path from the site's root and the SHA-256 of its content, in hex.
 */
export interface KeptSite {
  /** Whatever every reader needs: pages, scripts, styles, fonts. */
  readonly files: Readonly<Record<string, string>>;
  /** Recordings, kept only where the student asks for them. */
  readonly recordings: Readonly<Record<string, string>>;
  /** Bytes of all recordings together. */
  readonly recordingBytes: number;
}

/** From a page to the worker. */
export type KeepingOrder =
  | { readonly order: 'say' }
  | { readonly order: 'recordings'; readonly keep: boolean }
  /** The version that waits takes over now. */
  | { readonly order: 'take-over' };

/** From the worker to a page. */
export interface KeepingState {
  /** Bytes of all recordings of the book, 0 where it has none. */
  readonly recordingBytes: number;
  readonly recordings: 'kept' | 'not-kept' | 'failed';
}
