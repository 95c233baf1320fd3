/**
 * A drawn tune: one small SVG a phrase, so that a page flows them, two to a line on a laptop and
 * one on a phone, and each can be touched and looped by itself.
 */
export interface Score {
  /** `<symbol>` definitions used by the cells, to stand once in the page. */
  readonly symbols: string;
  readonly cells: readonly ScoreCell[];
}

export interface ScoreCell {
  /** `A1-A2`. */
  readonly name: string;
  /** Index of the part. */
  readonly part: number;
  /** The first cell of its part. */
  readonly opensPart: boolean;
  /** Phrase letter, where the cell begins a phrase. */
  readonly label: string | null;
  /** Clef, key and metre, drawn alone, to stand at the start of a line; same height as `svg`. */
  readonly prelude: string;
  readonly preludeWidth: number;
  readonly svg: string;
  /** In the drawing's own units, in which a staff space is `staffSpace`. */
  readonly width: number;
  readonly height: number;
  readonly staffSpace: number;
}
