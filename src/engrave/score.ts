/**
 * A drawn tune: one small SVG a phrase, so that a page flows them, two to a line on a laptop and
 * one on a phone, and each can be touched and looped by itself.
 *
 * For scripts: in a cell's `svg` every written note or chord is one element that carries
 * `data-n="12"`, the index of its event in `tune.events`, and nothing else does (rests have none).
 * Each stands in its bar's group, `data-bar="A1"`, the bar's name. A note that is drawn in two
 * places on one page, as where a lesson shows a phrase again, has the same number in both, so look
 * inside the `.notation` of its tune: `notation.querySelectorAll('[data-n="12"]')`. Fill and
 * stroke are `currentColor` all the way down: setting `color` on the element lights up the note.
 */
export interface Score {
  /** Glyphs that the cells use by id, to stand once in the page, in `<defs>`. */
  readonly symbols: string;
  /** The same, one each by id, for a page that shows several tunes. */
  readonly glyphs: ReadonlyMap<string, string>;
  readonly cells: readonly ScoreCell[];
  /** How far down stroke signs and `.lifted` slurs come where fingers are hidden. */
  readonly fingerRow: number;
}

export interface ScoreCell {
  /** `A1-A2`. */
  readonly name: string;
  /** Indices of its bars in written order, the pickup that leads into it counted in. */
  readonly bars: readonly number[];
  /** Index of its phrase in the section map. */
  readonly phrase: number;
  /** Index of the part, and its name. */
  readonly part: number;
  readonly partName: string;
  /** The first cell of its part. */
  readonly opensPart: boolean;
  /** Phrase letter, where the cell begins a phrase. */
  readonly label: string | null;
  /** Clef, key and metre, drawn alone, to stand at the start of a line; same height as `svg`. */
  readonly prelude: string;
  readonly preludeWidth: number;
  readonly svg: string;
  /** Each of its bars in words, to stand beside the drawing for who cannot see it. */
  readonly spoken: readonly { readonly bar: string; readonly text: string }[];
  /** In the drawing's own units, in which a staff space is `staffSpace`. */
  readonly width: number;
  readonly height: number;
  readonly staffSpace: number;
  /** Distance of the top staff line from the top: the same for every cell of a tune. */
  readonly staffTop: number;
  /** Height at the foot that the row of letters takes, to be cut off where they are hidden. */
  readonly lettersHeight: number;
  /** Where the heads of its notes stand, from the left, by event index. */
  readonly notes: readonly {
    readonly event: number;
    readonly left: number;
    readonly right: number;
  }[];
}
