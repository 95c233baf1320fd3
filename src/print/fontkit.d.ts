/** The little of fontkit that the print reads. */
declare module 'fontkit' {
  export interface Font {
    /** Code points that have a shape. */
    readonly characterSet: readonly number[];
    readonly familyName: string;
    readonly numGlyphs: number;
  }
  export function create(file: Buffer): Font;
}
