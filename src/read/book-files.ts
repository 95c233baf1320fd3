import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { nearest } from '../../shared/nearest.ts';
import { compareText } from './compare-text.ts';

/** Folders of a book, and what a page in each of them is. */
export const folders = { lesson: 'lessons', tune: 'tunes', page: 'pages' } as const;

/** The settings of a book. */
export const settingsFile = 'bowbook.yaml';

/** A book's files, as text, by path from its folder; media by path alone. */
export interface BookFiles {
  readonly texts: ReadonlyMap<string, string>;
  readonly media: readonly string[];
  /** Files and folders that look meant for the book and stand where nothing reads them. */
  readonly unread?: readonly string[];
}

/** Reads the files of the book in a folder. */
export async function bookFiles(root: string): Promise<BookFiles> {
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
