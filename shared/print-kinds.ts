/** What can be made for paper: the tune book, sheets of each tune, the pocket booklet. */
export const printKinds = ['book', 'sheets', 'pocket'] as const;
export type PrintKind = (typeof printKinds)[number];

/** The fading steps that a tune's sheets are made in, from 1, everything, to 5, the title. */
export const sheetSteps = [1, 2, 3, 4, 5] as const;
export type SheetStep = (typeof sheetSteps)[number];
