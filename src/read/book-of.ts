import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Book, BookSettings, ClipBlock, Page, TuneBlock } from './book.ts';
import { type BookFiles, folders, settingsFile } from './book-files.ts';
import { type BookIndex, indexNames } from './book-index.ts';
import { compareText } from './compare-text.ts';
import { type PageText, pageReader } from './page-reader.ts';
import { type ReadAhead, type ReadingThread, readAhead } from './read-ahead.ts';
import { type KeptPage, type ReadMemo, readMemo, sameSettings } from './read-memo.ts';
import type { FinishedPage, PageNames } from './read-page.ts';
import { defaultSettings, readSettings, type SettingsReading } from './read-settings.ts';
import { placeAt, sourceText } from './source-text.ts';
import { sameAnswers } from './traced-index.ts';

/** Where files of a book are looked for. */
const readFolders: readonly string[] = [...Object.values(folders), 'media'];

/** What a book is made from besides its files. */
interface BookOfOptions {
  /** Pages that are drafts are shown. */
  readonly drafts?: boolean;
  readonly memo?: ReadMemo;
  readonly ahead?: ReadAhead;
}

/** A book from its files, read. */
export function bookOf(root: string, files: BookFiles, options: BookOfOptions = {}): Book {
  const { memo } = options;
  const known = memo?.last && sameSettings(memo.last.files, files) ? memo.settings : null;
  const reading = known ?? settingsOf(files);
  const { settings, problems: settingsProblems } = reading;
  const reader = rememberingReader(files, reading, options);
  const names = pageTexts(files).map(reader.names);
  const { shown, index, problems: nameProblems } = indexOf(names, files, settings, options);
  const finished = shown.map(page => reader.page(page, index));
  const pages = finished.map(({ page }) => page);
  return reader.end({
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
        problem('file-unread', 'warning', null, {
          actual: file,
          nearest: nearest(file, readFolders),
        }),
      ),
    ],
  });
}

/** Reads the pages of a book in several threads: what `bookOf` takes over of it. */
export function bookAhead(
  files: BookFiles,
  threads: readonly ReadingThread[],
  options: BookOfOptions,
): Promise<ReadAhead> {
  const { settings } = settingsOf(files);
  const pages = pageTexts(files);
  const indexed = (names: ReadonlyMap<string, PageNames>): BookIndex =>
    indexOf(
      pages.flatMap(({ file }) => names.get(file) ?? []),
      files,
      settings,
      options,
    ).index;
  return readAhead(pages, threads, indexed, settings);
}

/** The pages among a book's files, in its order. */
const pageTexts = ({ texts }: BookFiles): readonly PageText[] =>
  (Object.keys(folders) as Page['kind'][]).flatMap(kind =>
    [...texts]
      .filter(([file]) => file.startsWith(`${folders[kind]}/`))
      .map(([file, text]) => ({ kind, file, text })),
  );

/** The names of a whole book, and which of its pages are shown. */
function indexOf(
  names: readonly PageNames[],
  { media }: BookFiles,
  { bowing }: BookSettings,
  options: BookOfOptions,
) {
  const isLeftOut = ({ isDraft }: PageNames): boolean => isDraft && !options.drafts;
  const shown = names.filter(page => !isLeftOut(page));
  const { problems, ...named } = indexNames(shown);
  const index: BookIndex = {
    ...named,
    presets: Object.keys(bowing.presets),
    pages: new Map(shown.map(page => [page.file, page.indexed])),
    media: new Set(media),
    drafts: new Set(names.filter(isLeftOut).map(page => page.file)),
  };
  return { shown, index, problems };
}

/** Reads pages, or takes over what was read ahead, or what a memo has of them. */
function rememberingReader(
  files: BookFiles,
  reading: SettingsReading,
  { memo = readMemo(), ahead }: BookOfOptions,
) {
  const { settings } = reading;
  const isUnderSame =
    memo.settings === reading ||
    JSON.stringify(memo.settings?.settings) === JSON.stringify(settings);
  const reader = pageReader();
  const names = new Map<string, PageNames>();
  const pages = new Map<string, KeptPage>();
  const isSame = (file: string): boolean =>
    memo.last?.files.texts.get(file) === files.texts.get(file);
  return {
    names(page: PageText): PageNames {
      const { file } = page;
      const known = ahead?.names.get(file) ?? (isSame(file) ? memo.names.get(file) : undefined);
      const made = known ?? reader.names(page);
      names.set(file, made);
      return made;
    },
    page({ kind, file }: PageNames, index: BookIndex): FinishedPage {
      const remembered = isSame(file) && isUnderSame ? memo.pages.get(file) : undefined;
      const known = ahead?.pages.get(file) ?? remembered;
      const made =
        known && sameAnswers(known.asked, index)
          ? known
          : reader.finish({ kind, file, text: files.texts.get(file) ?? '' }, index, settings);
      pages.set(file, made);
      return made.finished;
    },
    end(book: Book): Book {
      const read = { last: { files, book }, settings: reading, names, pages };
      Object.assign(memo, read satisfies ReadMemo);
      return book;
    },
  };
}

function settingsOf({ texts, media }: BookFiles): SettingsReading {
  const text = texts.get(settingsFile);
  if (text !== undefined) return readSettings(sourceText(settingsFile, text), media);
  const missing = problem('settings-missing', 'error', placeAt(settingsFile, 1, 1));
  return { settings: defaultSettings, problems: [missing] };
}

/**
 * Media that nothing published refers to: named in private notes, on drafts or by recordings withheld,
 * or not at all. A recording nobody has agreed to must not go out because its page is not ready yet.
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

/** A recording of a learner is not published before somebody has consented. */
function withoutConsent(pages: readonly Page[]): readonly Problem[] {
  return pages
    .flatMap(page => page.blocks)
    .filter((b): b is ClipBlock => b.kind === 'clip' && !b.published)
    .map(clip => problem('clip-consent', 'warning', clip.place, { actual: clip.words }));
}

/** Two files whose names come to the same page of the site. */
function repeatedSlugs(drafts: readonly PageNames[]): readonly Problem[] {
  const seen = new Map<string, string>();
  return drafts.flatMap(({ kind, slug, file }) => {
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
