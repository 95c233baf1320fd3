import { wordsFor } from '../../shared/words/words-for.ts';
import type { Book } from '../read/book.ts';
import { lessonPath, pagePath, tunePath } from './page-context.ts';

/** A file of the site for other programs: the feed, the sitemap, or the manifest by which a device installs the site. */
export interface SiteText {
  readonly path: string;
  readonly content: string;
}

/**
 * Makes the web manifest and, where the book gives the address at which it is published, a feed of lessons
 * (Atom, RFC 4287) and a sitemap (sitemaps.org, version 0.9), which both need absolute URLs. The dates in the
 * feed are those of the lessons.
 */
export function aroundSite(book: Book, tunes: readonly string[]): readonly SiteText[] {
  const manifest = { path: 'book.webmanifest', content: webManifest(book) };
  const { site } = book.settings;
  if (site === null) return [manifest];
  return [
    manifest,
    { path: 'feed.xml', content: lessonFeed(book, site) },
    { path: 'sitemap.xml', content: sitemap(book, tunes, site) },
  ];
}

/** Most lessons in the feed. */
const feedLength = 20;

function lessonFeed(book: Book, site: string): string {
  const { title, teacher } = book.settings;
  const lessons = book.lessons.filter(lesson => lesson.date !== null).slice(0, feedLength);
  const entries = lessons.map(lesson => {
    const address = site + lessonPath(lesson);
    const summary = lesson.summary === null ? '' : `<summary>${xml(lesson.summary)}</summary>`;
    return `<entry><title>${xml(lesson.title)}</title><id>${xml(address)}</id><link href="${xml(address)}"/><updated>${lesson.date}T00:00:00Z</updated>${summary}</entry>`;
  });
  // Atom demands a time of the last change. The clock would make every build different.
  const updated = lessons[0]?.date ?? '1970-01-01';
  return `<?xml version="1.0" encoding="UTF-8"?>
<feed xmlns="http://www.w3.org/2005/Atom">
<title>${xml(title)}</title><id>${xml(site)}</id><link href="${xml(site)}"/><link rel="self" href="${xml(`${site}feed.xml`)}"/>
<updated>${updated}T00:00:00Z</updated><author><name>${xml(teacher ?? title)}</name></author>
${entries.join('\n')}
</feed>
`;
}

function sitemap(book: Book, tunes: readonly string[], site: string): string {
  const pages = [
    '',
    'lessons/',
    ...book.lessons.map(lessonPath),
    'tunes/',
    ...tunes.map(tunePath),
    ...book.pages.map(pagePath),
    'how-to-read.html',
  ];
  const places = pages.map(path => `<url><loc>${xml(site + path)}</loc></url>`);
  return `<?xml version="1.0" encoding="UTF-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
${places.join('\n')}
</urlset>
`;
}

/** The manifest by which a device installs the site (W3C, Web Application Manifest). */
const webManifest = ({ settings }: Book): string =>
  `${JSON.stringify(
    {
      name: settings.title,
      short_name: settings.title,
      description:
        settings.about ?? wordsFor(settings.language, settings.noteNames).siteWords.tunes,
      lang: settings.language,
      start_url: 'index.html',
      scope: './',
      display: 'minimal-ui',
      background_color: settings.theme?.paper ?? '#f6f3ec',
      theme_color: settings.theme?.paper ?? '#f6f3ec',
      icons: [
        { src: 'assets/icons/book.svg', sizes: 'any', type: 'image/svg+xml' },
        { src: 'assets/icons/book-192.png', sizes: '192x192', type: 'image/png' },
        { src: 'assets/icons/book-512.png', sizes: '512x512', type: 'image/png' },
        {
          src: 'assets/icons/book-512.png',
          sizes: '512x512',
          type: 'image/png',
          purpose: 'maskable',
        },
      ],
    },
    null,
    2,
  )}\n`;

const signs: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Escapes text for XML content and attributes; drops characters that XML 1.0 forbids. */
const xml = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to leave out
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replace(/[&<>"]/g, sign => signs[sign] ?? sign);
