/** The part of fontkit that printing calls; fontkit has no types of its own. */
declare module 'fontkit' {
  export interface Font {
    /** Code points that have a glyph. */
    readonly characterSet: readonly number[];
    readonly familyName: string;
    readonly numGlyphs: number;
  }
  export function create(file: Buffer): Font;
}
