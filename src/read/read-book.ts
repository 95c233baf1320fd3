import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import type { Book, Page } from './book.ts';
import { type BookIndex, indexNames } from './book-index.ts';
import { draftPage, type FinishedPage, finishPage, type PageDraft } from './read-page.ts';
import {
  defaultSettings,
  readSettings,
  type SettingsReading,
  settingsFile,
} from './read-settings.ts';
import { placeAt, sourceText } from './source-text.ts';

/** Folders of a book, and what a page in each of them is. */
const folders = { lesson: 'lessons', tune: 'tunes', page: 'pages' } as const;

/** A book's files, as text, by path from its folder; media by path alone. */
export interface BookFiles {
  readonly texts: ReadonlyMap<string, string>;
  readonly media: readonly string[];
  /** Files and folders that look meant for the book and stand where nothing reads them. */
  readonly unread?: readonly string[];
}

/**
 * Reads the book in a folder. Faults of the book are in `problems`, with their places; a page with
 * an error in it comes without its text. Drafts are left out unless asked for.
 */
export async function readBook(
  root: string,
  options: { readonly drafts?: boolean } = {},
): Promise<Book> {
  return bookOf(root, await bookFiles(root), options);
}

/** The same from files already read. */
export function bookOf(
  root: string,
  files: BookFiles,
  options: { readonly drafts?: boolean } = {},
): Book {
  const { settings, problems: settingsProblems } = settingsOf(files);
  const drafts = (Object.keys(folders) as Page['kind'][]).flatMap(kind =>
    [...files.texts]
      .filter(([file]) => file.startsWith(`${folders[kind]}/`))
      .map(([file, text]) => draftPage(kind, sourceText(file, text))),
  );
  const shown = drafts.filter(draft => options.drafts || !draft.front.draft);
  const surveys = shown.map(draft => draft.survey);
  const { problems: nameProblems, ...names } = indexNames(surveys);
  const index: BookIndex = {
    ...names,
    presets: Object.keys(settings.bowing.presets),
    pages: new Map(shown.map(draft => [draft.source.file, draft.indexed])),
    media: new Set(files.media),
    drafts: new Set(drafts.filter(d => !shown.includes(d)).map(d => d.source.file)),
  };
  const finished = shown.map(draft => finishPage(draft, index, settings));
  const pages = finished.map(({ page }) => page);
  return {
    root,
    settings,
    lessons: pages
      .filter(page => page.kind === 'lesson')
      .sort((a, b) => compareText(b.date ?? '', a.date ?? '') || compareText(b.file, a.file)),
    tunePages: pages.filter(page => page.kind === 'tune'),
    pages: pages.filter(page => page.kind === 'page'),
    media: files.media,
    privateMedia: privateMedia(files, finished),
    problems: [
      ...settingsProblems,
      ...finished.flatMap(({ problems }) => problems),
      ...nameProblems,
      ...repeatedSlugs(shown),
      ...(files.unread ?? []).map(file =>
        problem('file-unread', 'warning', null, { actual: file }),
      ),
    ],
  };
}

function settingsOf({ texts }: BookFiles): SettingsReading {
  const text = texts.get(settingsFile);
  if (text !== undefined) return readSettings(sourceText(settingsFile, text));
  const missing = problem('settings-missing', 'error', placeAt(settingsFile, 1, 1));
  return { settings: defaultSettings, problems: [missing] };
}

/** Media that a private note refers to and nothing else does. */
function privateMedia({ media }: BookFiles, pages: readonly FinishedPage[]): readonly string[] {
  const within = (side: 'open' | 'hidden', file: string): boolean =>
    pages.some(page => page.media[side].has(file));
  return media.filter(file => within('hidden', file) && !within('open', file));
}

/** Two files whose names come to the same page of the site. */
function repeatedSlugs(drafts: readonly PageDraft[]): readonly Problem[] {
  const seen = new Map<string, string>();
  return drafts.flatMap(({ kind, slug, source: { file } }) => {
    const key = `${kind}/${slug}`;
    const other = seen.get(key);
    if (slug !== '' && other === undefined) {
      seen.set(key, file);
      return [];
    }
    const rule = slug === '' ? 'file-name-empty' : 'file-name-repeated';
    const facts = other === undefined ? {} : { other };
    return [problem(rule, 'error', placeAt(file, 1, 1), { actual: file, facts })];
  });
}

async function bookFiles(root: string): Promise<BookFiles> {
  const found = await Promise.all(Object.values(folders).map(folder => filesUnder(root, folder)));
  const isPage = (file: string): boolean => file.endsWith('.md');
  const pages = found.flat().filter(isPage);
  const texts = await Promise.all(
    [settingsFile, ...pages].map(async file => {
      const text = await readFile(join(root, file), 'utf8').catch(emptyIfMissing);
      return typeof text === 'string' ? [[file, text] as const] : [];
    }),
  );
  return {
    texts: new Map(texts.flat()),
    media: await filesUnder(root, 'media'),
    unread: [...(await strays(root)), ...found.flat().filter(file => !isPage(file))],
  };
}

/** Pages beside `bowbook.yaml` rather than in a folder, and folders whose name is misspelt. */
async function strays(root: string): Promise<readonly string[]> {
  const known = [...Object.values(folders), 'media'];
  const entries = await readdir(root, { withFileTypes: true }).catch(emptyIfMissing);
  return entries
    .filter(entry =>
      entry.isDirectory()
        ? !known.includes(entry.name) && nearest(entry.name, known) !== null
        : entry.name.endsWith('.md') && !/^readme\./i.test(entry.name),
    )
    .map(entry => entry.name)
    .sort(compareText);
}

/** Files of a folder in order of name, hidden ones left out; empty where there is no such folder. */
async function filesUnder(root: string, folder: string): Promise<readonly string[]> {
  const entries = await readdir(join(root, folder), { withFileTypes: true }).catch(emptyIfMissing);
  const found = await Promise.all(
    entries
      .filter(entry => !entry.name.startsWith('.'))
      .map(async entry => {
        const path = `${folder}/${entry.name}`;
        return entry.isDirectory() ? filesUnder(root, path) : [path];
      }),
  );
  return found.flat().sort(compareText);
}

function emptyIfMissing(error: NodeJS.ErrnoException): [] {
  if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return [];
  throw error;
}

/** By code point, the same on every machine. */
const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
