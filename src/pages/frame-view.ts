import { siteWords } from '../../shared/words/en/site.ts';
import type { PageContext } from './page-context.ts';
import { pagePath } from './page-context.ts';
import { type Html, html } from './render.ts';

/** What every page has around it. */
export interface FrameView {
  readonly lang: string;
  readonly title: string;
  readonly description: string | null;
  readonly kind: string;
  readonly root: string;
  readonly policy: string;
  readonly book: string;
  readonly teacher: string | null;
  readonly nav: readonly {
    readonly href: string;
    readonly label: string;
    readonly current: boolean;
  }[];
  readonly isPrivate: boolean;
  /** Symbols that the drawings of the page use; null where it has none. */
  readonly symbols: Html | null;
}

/**
 * Nothing but the site's own files, and no inline script or style. `file:` stands beside 'self'
 * since a page opened from a folder has no origin that every browser would take for 'self'.
 */
const policy = [
  "default-src 'none'",
  "style-src 'self' file:",
  "script-src 'self' file:",
  "font-src 'self' file:",
  "img-src 'self' file: data:",
  "media-src 'self' file:",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** The frame of the page at `path`. Ask for it last: it holds what the page's drawings need. */
export function frameView(
  context: PageContext,
  path: string,
  title: string,
  description: string | null,
  kind: string,
): FrameView {
  const { input, root, symbols } = context;
  const { settings, pages } = input.book;
  const entries = [
    { to: 'lessons/index.html', label: siteWords.lessons },
    { to: 'tunes/index.html', label: siteWords.tunes },
    ...pages.map(page => ({ to: pagePath(page), label: page.title })),
    { to: 'how-to-read.html', label: siteWords.howToRead },
  ];
  return {
    lang: settings.language,
    title: path === 'index.html' ? settings.title : `${title} · ${settings.title}`,
    description,
    kind: `is-${kind}`,
    root,
    policy,
    book: settings.title,
    teacher: settings.teacher,
    nav: entries.map(e => ({ href: root + e.to, label: e.label, current: e.to === path })),
    isPrivate: input.isPrivate,
    symbols: symbols.size === 0 ? null : html([...symbols.values()].join('')),
  };
}
