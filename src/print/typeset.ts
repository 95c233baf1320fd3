import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { PrintFonts } from './print-fonts.ts';

/** What is set: a source, and the files that it names, by path from the root. */
export interface Setting {
  readonly source: string;
  readonly files: ReadonlyMap<string, string | Buffer>;
}

/** A PDF, the number of its pages, and the page of each thing that its source noted. */
export interface Typeset {
  readonly pdf: Buffer;
  readonly pages: number;
  /** What the source noted with `#note("kind", …)`, in order. */
  readonly notes: readonly { readonly kind: string; readonly page: number; readonly of: string }[];
}

/** Pictures and sources exist in memory only, but the typesetter needs a root folder for their paths. */
const root = '/bowbook-print';

/**
 * Sets a source as PDF/UA-1: tagged, with a title, a language and a spoken alternative for every
 * picture, which the standard demands (ISO 14289-1, 7.1 to 7.3). The same source and files give the
 * same bytes: the document is dated by nothing. Throws where the source is wrong, which is a defect
 * of ours: text is escaped and characters are checked against the fonts before they come here.
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
