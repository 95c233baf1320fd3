import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { scriptFile } from '../../shared/words/script-file.ts';
import type { BookSettings } from '../read/book.ts';
import { fitStyles } from './fit.ts';
import { packageRoot } from './package-root.ts';
import { themeStyles } from './theme-styles.ts';

/** A file of the site that is not a page: its text, or a file to copy (absolute path). */
export type SiteAsset =
  | { readonly path: string; readonly content: string }
  | { readonly path: string; readonly copyOf: string };

/** Style sheets in the order in which they stand in `assets/book.css`. */
const sheets = [
  'tokens',
  'frame',
  'text',
  'lists',
  'finder',
  'blocks',
  'bow',
  'words',
  'notation',
  'map',
  'player',
  'by-ear',
  'try',
  'drills',
  'sets',
  'review',
  'print',
] as const;

/** Fonts, all under the SIL Open Font Licence: one for reading, one plain for signs and labels. */
const fonts = [
  ['brygada-1918', ['400-normal', '400-italic', '700-normal']],
  ['andika', ['400-normal', '700-normal']],
] as const;

/** Lists the styles, scripts, icons and fonts of a site, and the licences of all these. */
export function siteAssets({
  theme,
  language,
}: Pick<BookSettings, 'theme' | 'language'>): readonly SiteAsset[] {
  const root = packageRoot();
  const styles = sheets.map(name => {
    const text = readFileSync(join(root, 'dist', 'styles', `${name}.css`), 'utf8');
    return name === 'notation' ? fitStyles() + text : text;
  });
  return [
    { path: 'assets/book.css', content: [...styles, themeStyles(theme)].join('\n') },
    ...pageScripts(root, language),
    ...['book.svg', 'book-192.png', 'book-512.png'].map(icon => ({
      path: `assets/icons/${icon}`,
      copyOf: join(root, 'templates', 'icons', icon),
    })),
    ...fonts.flatMap(([font, faces]) => {
      const folder = join(root, 'node_modules', '@fontsource', font);
      return faces.map(face => ({
        path: `assets/fonts/${font}-latin-${face}.woff2`,
        copyOf: join(folder, 'files', `${font}-latin-${face}.woff2`),
      }));
    }),
    { path: 'assets/licences.txt', content: licences(root) },
  ];
}

/** The licence texts of everything that a site contains from Bowbook or its dependencies. */
function licences(root: string): string {
  const parts = [
    ['Bowbook: styles and scripts', 'LICENSE'],
    ['abcjs, whose signs the notation is drawn with', 'node_modules/abcjs/LICENSE.md'],
    ['MiniSearch, in search.js', 'node_modules/minisearch/LICENSE.txt'],
    ['Brygada 1918, in fonts', 'node_modules/@fontsource/brygada-1918/LICENSE'],
    ['Andika, in fonts', 'node_modules/@fontsource/andika/LICENSE'],
  ] as const;
  return parts
    .map(([what, file]) => `${what}\n\n${readFileSync(join(root, file), 'utf8').trim()}\n`)
    .join(`\n${'-'.repeat(72)}\n\n`);
}

/** Every bundled script of the pages, in the book's language. */
function pageScripts(root: string, language: string): SiteAsset[] {
  const folder = join(root, 'dist', 'browser');
  return readdirSync(folder)
    .filter(name => /^[^.]+\.js$/.test(name))
    .map(name => `${scriptFile(name.slice(0, -'.js'.length), language)}.js`)
    .sort()
    .map(name => ({ path: `assets/${name}`, copyOf: join(folder, name) }));
}

/** The service worker without its list of files. */
export const offlineScript = (): string =>
  readFileSync(join(packageRoot(), 'dist', 'offline', 'keep-site.js'), 'utf8');
