/** For whom a print is made. */
export const audiences = ['adults', 'children', 'large'] as const;
/** Who plays from the paper: it decides the size of the staves. */
export type Audience = (typeof audiences)[number];

/** Size of the paper. */
export type Paper = 'a4' | 'letter';

/** Width and height of each format in millimetres. */
export const papers: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};

/** Margins in millimetres. That at the spine is wider, since pages are bound or punched there. */
export const margins = { top: 16, bottom: 14, spine: 14, edge: 10 } as const;

/** Sizes of a print for one audience. Lengths in millimetres, text in points. */
export interface Sizes {
  /** Height of the staff, from its lowest line to its highest. */
  readonly staff: number;
  readonly text: number;
  /** The smallest text: credits, running heads, the words in a map. */
  readonly small: number;
  /** Plain type without serifs or italics, aligned left. */
  readonly plain: boolean;
  /** One phrase on each line, however wide the paper. */
  readonly phraseALine: boolean;
  /** Thickness of lines, as a multiple of that in the drawing. */
  readonly lines: number;
  /** Size of fingers, letters and labels, in drawing units; null as drawn. */
  readonly figures: number | null;
  /** Whether fingers are printed by default; `letters` likewise. */
  readonly fingers: boolean;
  readonly letters: boolean;
  /** Staff and text of the pocket booklet. */
  readonly pocket: { readonly staff: number; readonly text: number };
}

/**
 * Sizes by audience. Staff: 7.5 mm for parts (guidelines for music preparation of MOLA, the orchestra librarians;
 * by report, not read), 8 to 9 for children, 10 to 12 in large print (common practice). Text: 12 points at least.
 * Large print: 16 points at least, without serifs or italics, aligned left, lines thicker, fingerings larger in
 * proportion to the staff, one phrase on each line (UK Association for Accessible Formats, guidance on clear and
 * large print and on modified stave notation; edition not noted). Headings derive from `text`.
 */
export const sizesFor: Readonly<Record<Audience, Sizes>> = {
  adults: {
    staff: 7.5,
    text: 12,
    small: 10.5,
    plain: false,
    phraseALine: false,
    lines: 1,
    figures: null,
    fingers: false,
    letters: false,
    pocket: { staff: 4, text: 8.5 },
  },
  children: {
    staff: 8.5,
    text: 13,
    small: 12,
    plain: true,
    phraseALine: true,
    lines: 1,
    figures: null,
    fingers: true,
    letters: true,
    pocket: { staff: 4.5, text: 9.5 },
  },
  large: {
    staff: 11,
    text: 18,
    small: 16,
    plain: true,
    phraseALine: true,
    lines: 1.7,
    figures: 16,
    fingers: true,
    letters: false,
    pocket: { staff: 6, text: 14 },
  },
};

/** Staff spaces in a staff. */
const spaces = 4;

/** Length of one drawing unit in millimetres, where a staff space is `staffSpace` units. */
export const unitLength = (staff: number, staffSpace: number): number =>
  staff / spaces / staffSpace;
