import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import type { TestContext } from 'vitest';

/** Poppler's tools, a second reader of what is printed; the tests that need them skip without. */
export const popplerMissing: string | null = (() => {
  try {
    execFileSync('pdfinfo', ['-v'], { stdio: 'ignore' });
    return null;
  } catch {
    return 'skipped: poppler’s tools (pdfinfo, pdftotext, pdftocairo) are not installed';
  }
})();

if (popplerMissing !== null) console.warn(popplerMissing);

/** Skips the rest of a test that reads what is printed where there is nothing to read it with. */
export const needPoppler = (context: TestContext): void =>
  context.skip(popplerMissing !== null, popplerMissing ?? '');

/** What one of its tools prints about a PDF; nothing where they are missing, and the tests are skipped. */
export function poppler(
  tool: string,
  pdf: Buffer,
  before: string[] = [],
  after: string[] = [],
): string {
  // A group of tests that is skipped is gone through all the same.
  if (popplerMissing !== null) return '';
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-print-'));
  try {
    const file = join(folder, 'print.pdf');
    writeFileSync(file, pdf);
    const given = [...before, file, ...after];
    return execFileSync(tool, given, {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      maxBuffer: 1e9,
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The text of each page, from page 1 at index 0. */
export const pageTexts = (pdf: Buffer): readonly string[] =>
  poppler('pdftotext', pdf, ['-layout'], ['-']).split('\f').slice(0, -1);

/** One page drawn as SVG, in points. */
export function pageSvg(pdf: Buffer, page: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-print-'));
  try {
    const [file, svg] = [join(folder, 'print.pdf'), join(folder, 'page.svg')];
    writeFileSync(file, pdf);
    const pages = ['-f', `${page}`, '-l', `${page}`];
    execFileSync('pdftocairo', ['-svg', ...pages, file, svg], { stdio: 'ignore' });
    return readFileSync(svg, 'utf8');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Bookmark {
  readonly title: string;
  readonly page: number;
  readonly depth: number;
}

/** The bookmarks of a PDF, in order. */
export function bookmarks(pdf: Buffer): readonly Bookmark[] {
  const xml = poppler('pdftohtml', pdf, ['-xml', '-i', '-stdout']);
  let depth = 0;
  return [...xml.matchAll(/<outline>|<\/outline>|<item page="(\d+)">([^<]*)<\/item>/g)].flatMap(
    m => {
      if (m[0] === '<outline>') depth++;
      else if (m[0] === '</outline>') depth--;
      else return [{ title: unescaped(m[2] ?? ''), page: Number(m[1]), depth }];
      return [];
    },
  );
}

const unescaped = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replace(/&#(\d+);/g, (_, n: string) => String.fromCodePoint(Number(n)))
    .replaceAll('&amp;', '&');

/** Sizes of text in points: the tool measures in pixels of a page enlarged threefold. */
export function textSizes(pdf: Buffer): readonly number[] {
  const xml = poppler('pdftohtml', pdf, ['-xml', '-i', '-stdout', '-zoom', '3']);
  return [...xml.matchAll(/<fontspec [^>]*size="(\d+)"/g)].map(m => Number(m[1]) / 3);
}

/**
 * The spoken alternative of each figure in a PDF, which poppler does not show: `/Alt` in the structure tree
 * (ISO 32000-1, 14.9.3), read from the file's own streams. A string is Latin, or UTF-16 after a mark; null: a figure without.
 */
export function spokenAlternatives(pdf: Buffer): readonly (string | null)[] {
  const text = pdf.toString('latin1');
  const streams = [...text.matchAll(/stream\r?\n/g)].map(m => {
    const start = m.index + m[0].length;
    try {
      return inflateSync(pdf.subarray(start, text.indexOf('endstream', start))).toString('latin1');
    } catch {
      return '';
    }
  });
  // Each element of the tree begins with its type: what stands before the next is its own.
  return [text, ...streams].flatMap(part =>
    part
      .split('/StructElem')
      .filter(element => /^\s*\/S\s*\/Figure\b/.test(element))
      .map(element => {
        const [, latin, hex] =
          /\/Alt\s*(?:\(((?:\\[\s\S]|[^\\)])*)\)|<([0-9A-Fa-f]+)>)/.exec(element) ?? [];
        const written = hex === undefined ? latin : Buffer.from(hex, 'hex').toString('latin1');
        return written?.replaceAll('\0', '') ?? null;
      }),
  );
}
