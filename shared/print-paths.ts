/** Where the PDFs of a book stand in its site, from the site's root. */
export const printPaths = {
  book: 'print/tune-book.pdf',
  large: 'print/large-print.pdf',
  pocket: 'print/pocket-booklet.pdf',
  /** A tune's sheets in every fading step, beside its page. */
  tune: (id: string): string => `tunes/${id}-sheets.pdf`,
} as const;
