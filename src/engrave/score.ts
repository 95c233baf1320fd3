/**
 * A drawn tune: one small SVG a phrase, so that a page flows them, two to a line on a laptop and
 * one on a phone, and each can be touched and looped by itself.
 */
export interface Score {
  /** `<symbol>` definitions used by the cells, to stand once in the page. */
  readonly symbols: string;
  /** The same, one each by id, for a page that shows several tunes. */
  readonly glyphs: ReadonlyMap<string, string>;
  readonly cells: readonly ScoreCell[];
}

export interface ScoreCell {
  /** `A1-A2`. */
  readonly name: string;
  /** Indices of its bars in written order, the pickup that leads into it counted in. */
  readonly bars: readonly number[];
  /** Index of its phrase in the section map. */
  readonly phrase: number;
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
  /** Distance of the top staff line from the top: the same for every cell of a tune. */
  readonly staffTop: number;
}
