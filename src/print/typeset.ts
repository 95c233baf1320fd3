import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { PrintFonts } from './print-fonts.ts';

/** A source to typeset, and the files that it names, by path from the root. */
export interface Setting {
  readonly source: string;
  readonly files: ReadonlyMap<string, string | Buffer>;
}

/** A PDF, the number of its pages, and the page of each thing that its source noted. */
export interface Typeset {
  readonly pdf: Buffer;
  readonly pages: number;
  /** The notes that the source makes with `#note("kind", …)`, in order. */
  readonly notes: readonly { readonly kind: string; readonly page: number; readonly of: string }[];
}

/** Pictures and sources exist in memory only, but the typesetter needs a root folder for their paths. */
const root = '/bowbook-print';

/**
 * Typesets a source as PDF/UA-1: tagged, with a title, a language and a text alternative for every picture, as
 * the standard demands (ISO 14289-1, 7.1 to 7.3). The document has no date, so the same source and files give
 * the same bytes. Throws where the source has an error, which is a defect of the program: text is escaped, and its
 * characters are checked against the fonts, before.
 */
export function typeset({ source, files }: Setting, fonts: PrintFonts): Typeset {
  const compiler = NodeCompiler.create({
    workspace: root,
    fontArgs: [{ fontBlobs: [...fonts.files] }],
  });
  for (const [path, content] of files) {
    compiler.mapShadow(`${root}/${path}`, Buffer.from(content));
  }
  const compiled = compiler.compile({ mainFileContent: source });
  const document = compiled.result;
  if (document === null) {
    const error = compiled.takeError();
    const told = error === null ? [] : compiler.fetchDiagnostics(error);
    throw new Error(`the print does not set: ${JSON.stringify(told.slice(0, 3))}`);
  }
  const pdf = compiler.pdf(document, { pdfStandard: 'ua-1', creationTimestamp: 0 });
  const notes = compiler.query(document, { selector: '<note>', field: 'value' });
  const pages = document.numOfPages;
  compiler.evictCache(0);
  return { pdf, pages, notes };
}
