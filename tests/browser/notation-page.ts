import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { wordsFor } from '../../shared/words/words-for.ts';
import type { Score } from '../../src/engrave/score.ts';
import { fitStyles } from '../../src/pages/fit.ts';
import { notationView } from '../../src/pages/notation-view.ts';
import type { PageContext } from '../../src/pages/page-context.ts';
import { render } from '../../src/pages/render.ts';

const root = join(import.meta.dirname, '../..');
const styles = (name: string): string =>
  readFileSync(join(root, 'templates/styles', `${name}.css`), 'utf8').replace(
    /url\("fonts\/(andika|brygada-1918)(-[^"]*)"\)/g,
    (_, font: string, face: string) =>
      `url("${pathToFileURL(join(root, `node_modules/@fontsource/${font}/files/${font}${face}`)).href}")`,
  );

/** Layers to show, as their controls on a page would. */
export interface Layers {
  readonly fingers: boolean;
  readonly letters: boolean;
}

/** The symbols of some drawings, and each drawing as it stands on a page of the site. */
export function notationHtml(scores: readonly Score[]): string {
  // All that a drawing asks of its page: what stands on it already.
  const words = wordsFor('en', 'letters');
  const context = { ids: new Set(), symbols: new Map(), words } as unknown as PageContext;
  const drawings = scores.map((score, i) =>
    render('parts/notation', notationView(`tune-${i}`, score, context), words),
  );
  const symbols = [...context.symbols.values()].join('');
  return `<svg class="symbols" aria-hidden="true" width="0" height="0"><defs>${symbols}</defs></svg>
<main>${drawings.map(d => `<section>${d}</section>`).join('\n')}</main>`;
}

/** A page of drawings in the site's own styles and fonts, in a file of its own. */
export function writeNotationPage(
  body: string,
  layers: Layers = { fingers: true, letters: true },
): { readonly address: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-notation-'));
  const sheets = ['tokens', 'frame', 'text'].map(styles).join('\n');
  const box = (name: string, on: boolean): string =>
    `<input type="checkbox" name="${name}"${on ? ' checked' : ''} hidden>`;
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Drawings</title>
<style>${sheets}\n${fitStyles()}${styles('notation')}\n${styles('print')}</style></head>
<body>${box('fingers', layers.fingers)}${box('letters', layers.letters)}${body}</body></html>`;
  const file = join(folder, 'page.html');
  writeFileSync(file, html);
  return {
    address: pathToFileURL(file).href,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
