import type { NoteNames } from '../../shared/music/note-names.ts';
import { scriptFile } from '../../shared/words/script-file.ts';
import type { PaperAnswer } from './drill-view.ts';
import type { PageContext } from './page-context.ts';
import { type Html, html } from './render.ts';

/** What every page has around it. */
export interface FrameView {
  readonly lang: string;
  /** Note names of the book, for the scripts; null for letters. */
  readonly noteNames: NoteNames | null;
  readonly title: string;
  readonly description: string | null;
  readonly kind: string;
  readonly root: string;
  readonly policy: string;
  readonly book: string;
  /** URL of the page; null, as `picture` is, where the book does not say where it is published. */
  readonly address: string | null;
  readonly picture: string | null;
  readonly teacher: string | null;
  readonly nav: readonly {
    readonly href: string;
    readonly label: string;
    readonly current: boolean;
  }[];
  readonly isPrivate: boolean;
  /** The page is unfinished, so that no published site has it. */
  readonly isUnfinished: boolean;
  /** Script of every page. `later` names those of its blocks, which load after the page. */
  readonly script: string;
  readonly later: string | null;
  /** Symbols that the drawings of the page use; null where it has none. */
  readonly symbols: Html | null;
  /** Answers of the page's drills, which are printed after it; null where it has none. */
  readonly answers: { readonly title: string; readonly answers: readonly PaperAnswer[] } | null;
}

/**
 * Content policy: only the site's own files, and no inline script or style. `file:` is listed besides 'self'
 * since not every browser takes pages opened from a folder for one origin.
 */
const policy = [
  "default-src 'none'",
  "style-src 'self' file:",
  "script-src 'self' file:",
  "font-src 'self' file:",
  "img-src 'self' file: data:",
  "media-src 'self' file:",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** The frame of the page at `path`. Call it when the page's content is rendered: it includes the symbols that its drawings refer to. */
export function frameView(
  context: PageContext,
  path: string,
  title: string,
  description: string | null,
  kind: string,
): FrameView {
  const { input, nav, root, symbols, scripts, answers } = context;
  const { drillWords, noteNames } = context.words;
  const { settings } = input.book;
  return {
    lang: settings.language,
    title: path === 'index.html' ? settings.title : `${title} · ${settings.title}`,
    description,
    kind: `is-${kind}`,
    root,
    policy,
    book: settings.title,
    address:
      settings.site === null ? null : settings.site + path.replace(/(^|\/)index\.html$/, '$1'),
    picture: settings.site === null ? null : `${settings.site}assets/icons/book-512.png`,
    teacher: settings.teacher,
    nav: nav.map(({ to, label }) => ({ href: root + to, label, current: to === path })),
    isPrivate: input.isPrivate,
    isUnfinished: context.page?.unfinished ?? false,
    noteNames: noteNames === 'letters' ? null : noteNames,
    script: scriptFile('page', settings.language),
    later:
      scripts.size === 0
        ? null
        : [...scripts].map(name => scriptFile(name, settings.language)).join(' '),
    answers: answers.length === 0 ? null : { title: drillWords.answers, answers },
    symbols: symbols.size === 0 ? null : html([...symbols.values()].join('')),
  };
}
