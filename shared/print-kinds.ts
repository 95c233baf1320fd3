/** What can be made for paper: the tune book, sheets of each tune, the pocket booklet. */
export const printKinds = ['book', 'sheets', 'pocket'] as const;
export type PrintKind = (typeof printKinds)[number];

/** Where the PDFs of the whole book stand in its site, from the site's root; the sheets in large print. */
export const printPaths = {
  book: 'print/tune-book.pdf',
  sheets: 'print/large-print.pdf',
  pocket: 'print/pocket-booklet.pdf',
} as const satisfies Readonly<Record<PrintKind, string>>;

/** Where the sheets of one tune stand, in every fading step, beside its page. */
export const sheetsPath = (tune: string): string => `tunes/${tune}-sheets.pdf`;

/** The fading steps that a tune's sheets are made in, from 1, everything, to 5, the title. */
export const sheetSteps = [1, 2, 3, 4, 5] as const;
export type SheetStep = (typeof sheetSteps)[number];
