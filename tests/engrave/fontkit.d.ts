/** The little of fontkit that the tests read. */
declare module 'fontkit' {
  export interface Font {
    readonly unitsPerEm: number;
    layout(text: string): { readonly advanceWidth: number };
    glyphForCodePoint(code: number): { readonly advanceWidth: number };
  }
  export function openSync(file: string): Font;
}
