import { readFileSync } from 'node:fs';
import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { limits } from '../../shared/limits.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { compareText } from './compare-text.ts';

/** Folders of a book, and what a page in each of them is. */
export const folders = { lesson: 'lessons', tune: 'tunes', page: 'pages' } as const;

/** The settings of a book. */
export const settingsFile = 'bowbook.yaml';

/** A book's files, as text, by path from its folder; media by path alone. */
export interface BookFiles {
  readonly texts: ReadonlyMap<string, string>;
  readonly media: readonly string[];
  /** Files and folders that look like part of the book, but are where nothing reads them. */
  readonly unread?: readonly string[];
  /** What is wrong with the files themselves: too large, too many, or links out of the book. */
  readonly problems?: readonly Problem[];
}

/** Reads the files of the book in a folder. Links that lead out of it are not followed. */
export async function readBookFiles(root: string): Promise<BookFiles> {
  const names = [...Object.values(folders), 'media'];
  const listed = await Promise.all(names.map(folder => filesUnder(root, folder)));
  const settings = await ownFile(root, settingsFile);
  const pages = listed.slice(0, -1).flatMap(({ files }) => files);
  const media = listed.at(-1)?.files ?? [];
  const isPage = (file: string): boolean => file.endsWith('.md');
  const readable = pages.filter(isPage);
  const tooMany = [...many('.md', readable), ...many('media', media)];
  const texts = [
    ...(settings === 'own' ? [settingsFile] : []),
    ...(tooMany.length > 0 ? [] : readable),
  ].flatMap(file => textOf(root, file));
  const outside = [
    ...(settings === 'outside' ? [settingsFile] : []),
    ...listed.flatMap(list => list.outside),
  ];
  return {
    texts: new Map(texts),
    media,
    unread: [
      ...(await strays(root)),
      ...pages.filter(file => !isPage(file)),
      ...listed.flatMap(list => list.odd),
    ],
    problems: [
      ...outside.map(file => problem('outside-the-book', null, { actual: file })),
      ...tooMany,
      ...media.flatMap(oddName),
      ...(await Promise.all(media.map(file => runsOf(root, file)))).flat(),
      ...(await Promise.all(media.map(file => largeMedia(root, file)))).flat(),
    ],
  };
}

/**
 * A file with its text; empty where the file no longer exists. Reads synchronously: pages are small and
 * many, and a promise for each costs ten times what reading it does.
 */
function textOf(root: string, file: string): readonly (readonly [file: string, text: string])[] {
  try {
    return [[file, readFileSync(`${root}/${file}`, 'utf8')]]; // `join` takes a third as long again
  } catch (error) {
    return emptyIfMissing(error as NodeJS.ErrnoException);
  }
}

function many(actual: string, files: readonly string[]): readonly Problem[] {
  const facts = { found: files.length, most: limits.files };
  return files.length > limits.files ? [problem('files-past-limit', null, { actual, facts })] : [];
}

/** A problem for a path that a URL or a memory stick (exFAT) cannot have. */
function oddName(path: string): readonly Problem[] {
  const impossible = /[\\\p{Cc}]/u.exec(path)?.[0];
  if (impossible !== undefined) {
    return [problem('media-name-impossible', null, { actual: path, facts: { sign: impossible } })];
  }
  const [sign] = /[:*?"<>|]/.exec(path) ?? [];
  return sign === undefined ? [] : [problem('media-name', null, { actual: path, facts: { sign } })];
}

/** Endings of files that a browser opens as a page, or runs. */
const isProgram = /\.(?:x?html?|xht|xml|xslt?|m?js|cjs|wasm|swf)$/i;

/** Parts of an SVG that run when it is opened by itself, where no page's content policy applies. */
const runsInDrawing =
  /<(?:\w+:)?(?:script|foreignObject|handler)\b|\son\w+\s*=|javascript:|<!ENTITY/i;

/** A problem for a media file that would run in the reader's browser: any page may link to it. */
async function runsOf(root: string, file: string): Promise<readonly Problem[]> {
  const runs =
    isProgram.test(file) ||
    (/\.svg$/i.test(file) && runsInDrawing.test(await drawingText(root, file)));
  return runs ? [problem('media-runs', null, { actual: file })] : [];
}

/** Text of a drawing; empty where it is past the limit, which is a problem already. */
async function drawingText(root: string, file: string): Promise<string> {
  const found = await stat(join(root, file)).catch(emptyIfMissing);
  if (!('size' in found) || found.size > limits.pictureSize) return '';
  const text = await readFile(join(root, file), 'utf8').catch(emptyIfMissing);
  return typeof text === 'string' ? text.replaceAll('\0', '') : '';
}

const picture = /\.(?:png|jpe?g|gif|webp|svg|avif)$/i;

async function largeMedia(root: string, file: string): Promise<readonly Problem[]> {
  const found = (await stat(join(root, file)).catch(emptyIfMissing)) as { readonly size?: number };
  const what = picture.test(file) ? 'picture' : 'recording';
  const most = what === 'picture' ? limits.pictureSize : limits.recordingSize;
  if ((found.size ?? 0) <= most) return [];
  const facts = { what, found: found.size ?? 0, most } as const;
  return [problem('media-past-limit', null, { actual: file, facts })];
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

/** What lies in a folder of the book, by path from the book's own. */
interface Listed {
  readonly files: readonly string[];
  /** Links that lead out of the book. */
  readonly outside: readonly string[];
  /** Neither files nor folders: links to folders or to nothing, pipes, devices. */
  readonly odd: readonly string[];
}

const nothing: Listed = { files: [], outside: [], odd: [] };

/** Files of a folder in order of name, hidden ones left out; empty where there is no such folder. */
async function filesUnder(root: string, folder: string): Promise<Listed> {
  if ((await ownFile(root, folder)) === 'outside') return { ...nothing, outside: [folder] };
  const entries = await readdir(join(root, folder), { withFileTypes: true }).catch(emptyIfMissing);
  const found = await Promise.all(
    entries
      .filter(entry => !entry.name.startsWith('.'))
      .map(async (entry): Promise<Listed> => {
        const path = `${folder}/${entry.name}`;
        if (entry.isDirectory()) return filesUnder(root, path);
        if (entry.isFile()) return { ...nothing, files: [path] };
        const kind = entry.isSymbolicLink() ? await ownFile(root, path) : 'odd';
        if (kind === 'outside') return { ...nothing, outside: [path] };
        return kind === 'own' ? { ...nothing, files: [path] } : { ...nothing, odd: [path] };
      }),
  );
  const sorted = (key: keyof Listed): readonly string[] =>
    found.flatMap(list => [...list[key]]).sort(compareText);
  return { files: sorted('files'), outside: sorted('outside'), odd: sorted('odd') };
}

/** Whether a path leads to a file in the book's own folder, to somewhere else, or to no file. */
async function ownFile(root: string, path: string): Promise<'own' | 'outside' | 'odd'> {
  const real = await realpath(join(root, path)).catch(emptyIfMissing);
  if (typeof real !== 'string') return 'odd';
  const home = await realpath(root);
  if (real !== home && !real.startsWith(home.endsWith(sep) ? home : home + sep)) return 'outside';
  return (await stat(real)).isFile() ? 'own' : 'odd';
}

function emptyIfMissing(error: NodeJS.ErrnoException): [] {
  if (['ENOENT', 'ENOTDIR', 'ELOOP'].includes(error.code ?? '')) return [];
  throw error;
}
