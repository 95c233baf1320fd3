import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { aroundSite } from '../../src/pages/around-site.ts';
import { readBook } from '../../src/read/read-book.ts';

const demo = await readBook(join(import.meta.dirname, '../../content'));
const published = { ...demo, settings: { ...demo.settings, site: 'https://fiddles.example/' } };
const textOf = (files: ReturnType<typeof aroundSite>, path: string): string =>
  files.find(file => file.path === path)?.content ?? '';
const parseXml = (text: string): Document =>
  new JSDOM(text, { contentType: 'application/xml' }).window.document;

describe('around the site', () => {
  it('has no feed and no sitemap while its address is not known', () => {
    const unpublished = { ...demo, settings: { ...demo.settings, site: null } };
    expect(aroundSite(unpublished, []).map(f => f.path)).toEqual(['book.webmanifest']);
  });

  it('tells of the lessons, newest first, in a feed as RFC 4287 asks', () => {
    const feed = parseXml(textOf(aroundSite(published, []), 'feed.xml')).documentElement;
    expect(feed.namespaceURI).toBe('http://www.w3.org/2005/Atom');
    // Section 4.1.1: exactly one id, title and updated; an author of the feed or of every entry.
    for (const name of ['id', 'title', 'updated', 'author']) {
      expect([...feed.children].filter(c => c.localName === name)).toHaveLength(1);
    }
    const entries = [...feed.getElementsByTagName('entry')];
    expect(entries).toHaveLength(demo.lessons.length);
    const dates = entries.map(e => e.getElementsByTagName('updated')[0]?.textContent ?? '');
    expect(dates).toEqual(dates.toSorted().toReversed());
    // Section 3.3: dates as RFC 3339 has them.
    for (const date of dates) expect(date).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    const ids = entries.map(e => e.getElementsByTagName('id')[0]?.textContent ?? '');
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every(id => id.startsWith('https://fiddles.example/lessons/'))).toBe(true);
  });

  it('lists every page once, by its whole address, as sitemaps.org asks', () => {
    const map = parseXml(textOf(aroundSite(published, ['wet-rope']), 'sitemap.xml'));
    const places = [...map.getElementsByTagName('loc')].map(l => l.textContent ?? '');
    expect(new Set(places).size).toBe(places.length);
    expect(places).toContain('https://fiddles.example/tunes/wet-rope.html');
    expect(places.every(place => URL.canParse(place))).toBe(true);
  });

  it('writes any title as text, never as markup', () => {
    const title = `<b>"Tide" & 'Table'</b>\u0001 ]]>`;
    const [first] = published.lessons;
    if (!first) throw new Error('the demo book has lessons');
    const book = { ...published, lessons: [{ ...first, title }] };
    const feed = parseXml(textOf(aroundSite(book, []), 'feed.xml'));
    const read = feed.getElementsByTagName('entry')[0]?.getElementsByTagName('title')[0];
    expect(read?.textContent).toBe(title.replace('\u0001', ''));
    expect(feed.getElementsByTagName('b')).toHaveLength(0);
  });

  it('can be installed: a name, a start, icons of 192 and 512 pixels', () => {
    const manifest = JSON.parse(textOf(aroundSite(demo, []), 'book.webmanifest'));
    expect(manifest.name).toBe(demo.settings.title);
    expect(manifest.start_url).toBe('index.html');
    const sizes = manifest.icons.map((icon: { sizes: string }) => icon.sizes);
    expect(sizes).toEqual(expect.arrayContaining(['192x192', '512x512']));
  });
});
