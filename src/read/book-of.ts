import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Book, BookSettings, ClipBlock, Page, TuneBlock } from './book.ts';
import { type BookNames, gatherNames } from './book-names.ts';
import { compareText } from './compare-text.ts';
import type { PageNames } from './page-names.ts';
import { type PageReader, type PageText, pageReader } from './page-reader.ts';
import { type BookFiles, folders, settingsFile } from './read-book-files.ts';
import type { FinishedPage } from './read-page.ts';
import { defaultSettings, readSettings, type SettingsReading } from './read-settings.ts';
import { placeAt, sourceText } from './source-text.ts';

/** Folders of a book that are read. */
const readFolders: readonly string[] = [...Object.values(folders), 'media'];

interface BookOfOptions {
  /** Unfinished pages are shown. */
  readonly unfinished?: boolean;
  readonly reader?: PageReader;
}

/** Reads a book from its files. Faults of the book become `problems`; only a defect of the program throws. */
export function bookOf(root: string, files: BookFiles, options: BookOfOptions = {}): Book {
  const { reader = pageReader() } = options;
  const { settings, problems: settingsProblems } = settingsOf(files);
  const texts = pageTexts(files);
  const names = texts.map(reader.names);
  const { shown, bookNames, problems: nameProblems } = namesOfBook(names, files, settings, options);
  const finished = texts
    .filter(({ file }) => bookNames.pages.has(file))
    .map(page => reader.finish(page, bookNames, settings));
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
    privateMedia: privateMedia(files, finished, settings),
    problems: [
      ...(files.problems ?? []),
      ...settingsProblems,
      ...finished.flatMap(({ problems }) => problems),
      ...nameProblems,
      ...withoutConsent(pages),
      ...repeatedSlugs(shown),
      ...(files.unread ?? []).map(file =>
        problem('file-unread', null, {
          actual: file,
          nearest: nearest(file, readFolders),
        }),
      ),
    ],
  };
}

/** The pages among a book's files, in its order. */
const pageTexts = ({ texts }: BookFiles): readonly PageText[] =>
  (Object.keys(folders) as Page['kind'][]).flatMap(kind =>
    [...texts]
      .filter(([file]) => file.startsWith(`${folders[kind]}/`))
      .map(([file, text]) => ({ kind, file, text })),
  );

/** The names of a whole book, and which of its pages are shown. */
function namesOfBook(
  names: readonly PageNames[],
  { media }: BookFiles,
  { bowing }: BookSettings,
  options: BookOfOptions,
) {
  const isLeftOut = ({ isUnfinished }: PageNames): boolean => isUnfinished && !options.unfinished;
  const shown = names.filter(page => !isLeftOut(page));
  const { problems, ...named } = gatherNames(shown);
  const bookNames: BookNames = {
    ...named,
    presets: Object.keys(bowing.presets),
    pages: new Map(shown.map(page => [page.file, page.target])),
    media: new Set(media),
    unfinished: new Set(names.filter(isLeftOut).map(page => page.file)),
  };
  return { shown, bookNames, problems };
}

function settingsOf({ texts, media }: BookFiles): SettingsReading {
  const text = texts.get(settingsFile);
  if (text !== undefined) return readSettings(sourceText(settingsFile, text), media);
  const missing = problem('settings-missing', placeAt(settingsFile, 1, 1));
  return { settings: defaultSettings, problems: [missing] };
}

/**
 * Media that nothing published refers to: those named only in private notes, on unfinished pages or by
 * recordings that are withheld, and those not named at all. They are not published.
 */
function privateMedia(
  { media }: BookFiles,
  pages: readonly FinishedPage[],
  { theme }: BookSettings,
): readonly string[] {
  const blocks = pages.flatMap(({ page }) => page.blocks);
  const clips = blocks.filter((b): b is ClipBlock => b.kind === 'clip');
  const published = new Set(
    blocks.filter((b): b is TuneBlock => b.kind === 'tune' && mayPublish(b.rights)).map(b => b.id),
  );
  const isOpen = (clip: ClipBlock): boolean =>
    !clip.hidden && clip.published && published.has(clip.of);
  const open = new Set(pages.flatMap(page => [...page.media]));
  for (const clip of clips) if (clip.src !== null && isOpen(clip)) open.add(clip.src);
  if (theme?.picture) open.add(theme.picture);
  return media.filter(file => !open.has(file));
}

/** A problem for each recording of a learner without consent; it is not published. */
function withoutConsent(pages: readonly Page[]): readonly Problem[] {
  return pages
    .flatMap(page => page.blocks)
    .filter((b): b is ClipBlock => b.kind === 'clip' && !b.published)
    .map(clip => problem('clip-consent', clip.place, { actual: clip.words }));
}

/** A problem for each file whose page would have the path of another's. */
function repeatedSlugs(pages: readonly PageNames[]): readonly Problem[] {
  const seen = new Map<string, string>();
  return pages.flatMap(({ kind, slug, file }): readonly Problem[] => {
    const key = `${kind}/${slug}`;
    const other = seen.get(key);
    if (slug !== '' && other === undefined) {
      seen.set(key, file);
      return [];
    }
    const place = placeAt(file, 1, 1);
    return other === undefined
      ? [problem('file-name-empty', place, { actual: file })]
      : [problem('file-name-repeated', place, { actual: file, facts: { other } })];
  });
}
