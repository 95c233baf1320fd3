/** For whom a print is made. */
export const audiences = ['adults', 'children', 'large'] as const;
/** Who plays from the paper: it decides the size of the staves. */
export type Audience = (typeof audiences)[number];

/** Size of the paper. */
export type Paper = 'a4' | 'letter';

/** Width and height in millimetres. */
export const papers: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};

/** Millimetres. The side of the spine has room for it: pages are bound or punched there. */
export const margins = { top: 16, bottom: 14, spine: 14, edge: 10 } as const;

/** Print in a size that its readers need. Lengths in millimetres, text in points. */
export interface Sizes {
  /** From the lowest line of the staff to the highest. */
  readonly staff: number;
  readonly text: number;
  /** The least text on a page: credits, running heads, the words in a map. */
  readonly small: number;
  /** Plain type without serifs or italics, aligned left. */
  readonly plain: boolean;
  /** A phrase a line, however wide the paper. */
  readonly phraseALine: boolean;
  /** Thickness of a staff line against that of the drawing. */
  readonly lines: number;
  /** Size of fingers, letters and labels, in drawing units; null as drawn. */
  readonly figures: number | null;
  /** Shown where nothing else is asked for. */
  readonly fingers: boolean;
  readonly letters: boolean;
  /** Of the pocket booklet: its staff, and its text. */
  readonly pocket: { readonly staff: number; readonly text: number };
}

/**
 * Staff 7.5 mm for parts (the guidelines for music preparation of MOLA, the orchestra librarians; by report, not read), 8 to 9 for
 * children, 10 to 12 in large print (common practice). Text 12 points at least; large print 16 at
 * least, without serifs or italics and aligned left, lines thicker, fingerings grown by more than
 * the staff, a phrase a line (UK Association for Accessible Formats, its guidance on clear and
 * large print and on modified stave notation, of which the edition was not noted). Headings are made from `text`.
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

/** Millimetres of one drawing unit, where a staff space is `staffSpace` units. */
export const unitLength = (staff: number, staffSpace: number): number =>
  staff / spaces / staffSpace;
