/**
 * Widths of Andika, the font that the site ships for plain text, from the space to `~`, in
 * thousandths of the size. `tests/engrave/measure-text.test.ts` holds them to the font's own files.
 */
const regular = [
  269, 373, 500, 586, 586, 745, 597, 295, 388, 388, 502, 586, 317, 420, 313, 488, 586, 586, 586,
  586, 586, 586, 586, 586, 586, 586, 313, 317, 586, 586, 586, 513, 831, 681, 627, 662, 701, 566,
  562, 693, 720, 476, 471, 640, 527, 876, 732, 713, 583, 720, 637, 574, 618, 703, 667, 1016, 647,
  645, 601, 386, 488, 386, 415, 622, 283, 562, 564, 498, 581, 535, 366, 549, 574, 276, 291, 505,
  276, 823, 579, 557, 571, 552, 435, 471, 408, 579, 522, 757, 530, 518, 508, 488, 337, 488, 544,
] as const;

const bold = [
  269, 381, 530, 605, 605, 764, 662, 305, 420, 420, 508, 586, 325, 437, 347, 527, 605, 605, 605,
  605, 605, 605, 605, 605, 605, 605, 347, 347, 586, 586, 586, 532, 851, 725, 676, 676, 725, 592,
  586, 719, 740, 510, 503, 698, 552, 906, 754, 732, 623, 754, 674, 607, 618, 728, 715, 1042, 667,
  666, 610, 415, 527, 415, 430, 632, 313, 613, 593, 499, 618, 542, 391, 579, 603, 313, 327, 556,
  313, 859, 608, 566, 603, 591, 486, 505, 432, 608, 539, 767, 579, 537, 518, 508, 337, 508, 544,
] as const;

/** Beyond those: what ends a low, a high or a varied note's or phrase's letter. */
const others: Readonly<Record<string, number>> = { '’': 266, '′': 234, '″': 410, '°': 313 };

/** Signs that the font lacks come from another: about as wide as a figure. */
const otherWidth = 586;

/** Size of an accidental's glyph among letters, for each unit of their size. */
export const accidentalScale = 0.042;

/**
 * Accidentals that stand among letters. No text font can be trusted to have them, so that they are
 * drawn, each as the glyph that stands before notes; widths are the glyph's, in drawing units.
 */
export const accidentals: Readonly<
  Record<string, { readonly glyph: string; readonly width: number }>
> = {
  '♯': { glyph: 'accidentals.sharp', width: 8.25 },
  '♭': { glyph: 'accidentals.flat', width: 6.75 },
  '♮': { glyph: 'accidentals.nat', width: 5.4 },
  '𝄪': { glyph: 'accidentals.dblsharp', width: 7.95 },
  '𝄫': { glyph: 'accidentals.dblflat', width: 12.1 },
};
/** Air beside an accidental, in thousandths of the size. */
const beside = 100;

const advance = (c: string, widths: readonly number[]): number => {
  const accidental = accidentals[c];
  if (accidental) return accidental.width * accidentalScale * 1000 + beside;
  return widths[(c.codePointAt(0) ?? 0) - 32] ?? others[c] ?? otherWidth;
};

/** Width and line height of a text as the site's pages show it, without kerning. */
export const measureText = (text: string, size: number) => measureIn(regular, text, size);

/** The same in the font's bold face. */
export const measureBold = (text: string, size: number) => measureIn(bold, text, size);

function measureIn(widths: readonly number[], text: string, size: number) {
  let sum = 0;
  for (const c of text) sum += advance(c, widths);
  return { width: (sum * size) / 1000, height: size * 1.2 };
}
