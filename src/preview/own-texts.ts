import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type PreviewBook, previewPaths } from '../../shared/preview-news.ts';
import { previewWords } from '../../shared/words/en/preview.ts';
import { ownPage } from './preview-page.ts';

/** A text with its media type. */
export interface OwnText {
  readonly type: string;
  readonly text: string;
}

/**
 * Returns a function that gives the preview's own files by path, null for other paths: its scripts and
 * style sheets, the page for tapping along, and that page's data. `program` is the folder that Bowbook
 * is installed in.
 */
export function ownTexts(
  program: string,
  now: { readonly book: () => PreviewBook; readonly buildNumber: () => number },
): (path: string) => OwnText | null {
  const template = (...steps: string[]): string =>
    readFileSync(join(program, 'templates', ...steps), 'utf8');
  const script = (name: string) => () => ({
    type: 'text/javascript; charset=utf-8',
    text: readFileSync(join(program, 'dist', 'preview', `${name}.js`), 'utf8'),
  });
  const style = (make: () => string) => () => ({ type: 'text/css; charset=utf-8', text: make() });
  const texts: ReadonlyMap<string, () => OwnText> = new Map([
    ['/preview/refresh.js', script('refresh')],
    ['/preview/tap.js', script('tap')],
    ['/preview/panel.css', style(() => template('preview', 'panel.css'))],
    // The site's design tokens, with font addresses that hold here.
    [
      '/preview/own.css',
      style(
        () =>
          template('styles', 'tokens.css').replaceAll('url("fonts/', 'url("/assets/fonts/') +
          template('preview', 'own.css'),
      ),
    ],
    [
      previewPaths.tap,
      () => ({
        type: 'text/html; charset=utf-8',
        text: ownPage({
          title: previewWords.tap.title,
          text: previewWords.tap.lead,
          script: 'tap',
          buildNumber: now.buildNumber(),
        }),
      }),
    ],
    [
      previewPaths.book,
      () => ({ type: 'application/json; charset=utf-8', text: JSON.stringify(now.book()) }),
    ],
  ]);
  return path => texts.get(path)?.() ?? null;
}
