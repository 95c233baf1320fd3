import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Book, BookSettings, ClipBlock, Page, TuneBlock } from './book.ts';
import { type BookFiles, folders, settingsFile } from './book-files.ts';
import { type BookIndex, indexNames } from './book-index.ts';
import { compareText } from './compare-text.ts';
import { type KeptPage, type ReadMemo, readMemo } from './read-memo.ts';
import {
  draftPage,
  type FinishedPage,
  finishPage,
  namesOf,
  type PageDraft,
  type PageNames,
} from './read-page.ts';
import { defaultSettings, readSettings, type SettingsReading } from './read-settings.ts';
import { placeAt, sourceText } from './source-text.ts';
import { sameAnswers, traceIndex } from './traced-index.ts';

/** Where files of a book are looked for. */
const readFolders: readonly string[] = [...Object.values(folders), 'media'];

/** A book from its files, read. */
export function bookOf(
  root: string,
  files: BookFiles,
  options: { readonly drafts?: boolean; readonly memo?: ReadMemo } = {},
): Book {
  const { settings, problems: settingsProblems } = settingsOf(files);
  const reader = pageReader(files, settings, options.memo ?? readMemo());
  const drafts = (Object.keys(folders) as Page['kind'][]).flatMap(kind =>
    [...files.texts.keys()]
      .filter(file => file.startsWith(`${folders[kind]}/`))
      .map(file => reader.names(kind, file)),
  );
  const shown = drafts.filter(draft => options.drafts || !draft.isDraft);
  const { problems: nameProblems, ...names } = indexNames(shown);
  const index: BookIndex = {
    ...names,
    presets: Object.keys(settings.bowing.presets),
    pages: new Map(shown.map(draft => [draft.file, draft.indexed])),
    media: new Set(files.media),
    drafts: new Set(drafts.filter(d => !shown.includes(d)).map(d => d.file)),
  };
  const finished = shown.map(draft => reader.page(draft, index));
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

/** Reads pages, or takes over what a memo has of them. */
function pageReader(files: BookFiles, settings: BookSettings, memo: ReadMemo) {
  const held = JSON.stringify(settings);
  const drafts = new Map<string, PageDraft>();
  const names = new Map<string, PageNames>();
  const pages = new Map<string, KeptPage>();
  const isSame = (file: string): boolean =>
    memo.last?.files.texts.get(file) === files.texts.get(file);
  const draft = (kind: Page['kind'], file: string): PageDraft => {
    const known = drafts.get(file);
    const made = known ?? draftPage(kind, sourceText(file, files.texts.get(file) ?? ''));
    drafts.set(file, made);
    return made;
  };
  return {
    names(kind: Page['kind'], file: string): PageNames {
      const known = isSame(file) ? memo.names.get(file) : undefined;
      const made = known ?? namesOf(draft(kind, file));
      names.set(file, made);
      return made;
    },
    page({ kind, file }: PageNames, index: BookIndex): FinishedPage {
      const known = isSame(file) && memo.settings === held ? memo.pages.get(file) : undefined;
      if (known && sameAnswers(known.asked, index)) {
        pages.set(file, known);
        return known.finished;
      }
      const trace = traceIndex(index);
      const finished = finishPage(draft(kind, file), trace.index, settings);
      pages.set(file, { asked: trace.asked(), finished });
      drafts.delete(file);
      return finished;
    },
    end(book: Book): Book {
      const read = { last: { files, book }, settings: held, names, pages };
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
