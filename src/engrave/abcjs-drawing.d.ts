/**
 * The parts of abcjs 6.7.2 that lay out and draw one line of music, which it does not type. We
 * call them apart from its own page-making, so that each phrase is drawn by itself and nothing
 * needs a document. Vertical positions are staff steps: the lowest line is 2, the highest 10.
 */
declare module 'abcjs/src/write/engraver-controller.js' {
  const EngraverController: { readonly prototype: object };
  export default EngraverController;
}
declare module 'abcjs/src/write/renderer.js' {
  const Renderer: { readonly prototype: object };
  export default Renderer;
}
declare module 'abcjs/src/write/creation/abstract-engraver.js' {
  const AbstractEngraver: new (
    textSize: object,
    tuneNumber: number,
    options: object,
  ) => {
    setStemHeight(pixels: number): void;
    measureLength: number;
    startlimitelem: { x: number; w: number };
    createABCLine(
      staffs: readonly object[],
      tempo: null,
      line: number,
    ): import('./laid-line.ts').StaffGroup;
  };
  export default AbstractEngraver;
}
declare module 'abcjs/src/write/creation/elements/absolute-element.js' {
  const AbsoluteElement: { readonly prototype: import('./laid-line.ts').AbsoluteElement };
  export default AbsoluteElement;
}
declare module 'abcjs/src/write/layout/layout.js' {
  const layout: (
    renderer: object,
    tune: object,
    width: number,
    space: number,
    expandToWidest: boolean,
    timeBased: undefined,
  ) => number;
  export default layout;
}
declare module 'abcjs/src/write/layout/staff-group.js' {
  /** Stands the signs of a line side by side; `spacing` in units for each unit of a note's length. */
  const layoutStaffGroup: (
    spacing: number,
    minPadding: number,
    debug: boolean,
    group: import('./laid-line.ts').StaffGroup,
    leftEdge: number,
  ) => { readonly spacingUnits: number; readonly minSpace: number };
  export default layoutStaffGroup;
}
declare module 'abcjs/src/write/draw/staff-group.js' {
  const drawStaffGroup: (
    renderer: object,
    group: object,
    selectables: object,
    line: number,
  ) => void;
  export default drawStaffGroup;
}
declare module 'abcjs/src/write/helpers/classes.js' {
  const Classes: new (options: { shouldAddClasses: boolean }) => object;
  export default Classes;
}
declare module 'abcjs/src/write/helpers/get-font-and-attr.js' {
  const GetFontAndAttr: new (formatting: object, classes: object) => object;
  export default GetFontAndAttr;
}
declare module 'abcjs/src/write/helpers/get-text-size.js' {
  const GetTextSize: new (fontAndAttr: object, paper: object) => object;
  export default GetTextSize;
}
declare module 'abcjs/src/write/creation/glyphs.js' {
  const glyphs: {
    /** A path of the glyph with its origin at (x, y): an absolute start, then relative steps. */
    getPathForSymbol(
      x: number,
      y: number,
      name: string,
    ): readonly (readonly [command: string, ...numbers: number[]])[] | null;
    /** Draws a glyph with its origin at (x, y); null where there is none of that name. */
    printSymbol(
      x: number,
      y: number,
      name: string,
      paper: { glyph?(name: string, x: number, y: number, attributes: object): object | null },
      attributes: object,
    ): object | null;
  };
  export default glyphs;
}
declare module 'abcjs/src/write/svg.js' {
  /** abcjs's own surface, which needs a global `document`. */
  const Svg: new (wrapper: HTMLElement) => { readonly svg: SVGSVGElement };
  export default Svg;
}
