import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { JSDOM } from 'jsdom';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { germanName, type NoteNames, noteSymbol } from '../../shared/music/note-names.ts';
import { parsePitch } from '../../shared/music/pitch.ts';
import { typedNotes } from '../../shared/search/fold-text.ts';
import * as german from '../../shared/words/de/reader-words.ts';
import * as english from '../../shared/words/en/reader-words.ts';
import { localeOf, wordedIn } from '../../shared/words/worded-languages.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { germanBook } from './german-book.ts';

const folder = mkdtempSync(join(tmpdir(), 'bowbook-languages-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Builds the German book; its pages by path. */
async function built(
  name: string,
  settings: string,
  isPrivate = false,
): Promise<ReadonlyMap<string, string>> {
  const root = join(folder, name);
  for (const [path, text] of Object.entries(germanBook(settings))) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const out = join(folder, `${name}-site`);
  const { failed, problems } = await buildSite({ root, out, isPrivate, progress: () => {} });
  expect([failed, problems.filter(p => p.severity === 'error')]).toEqual([false, []]);
  const files = readdirSync(out, { recursive: true, encoding: 'utf8' });
  const texts = files.filter(f => /\.(?:html|webmanifest|js)$/.test(f));
  return new Map(texts.map(path => [path, readFileSync(join(out, path), 'utf8')] as const));
}

/** What is read and heard on a page: its text, and the attributes that are spoken or shown. */
function wordsOn(html: string): string {
  const { document } = new JSDOM(html).window;
  for (const silent of document.querySelectorAll('script, style')) silent.remove();
  const spoken = [
    'aria-label',
    'alt',
    'title',
    'content',
    'placeholder',
    'label',
    'aria-description',
  ];
  const attributes = [...document.querySelectorAll('*')].flatMap(element =>
    spoken.flatMap(name => element.getAttribute(name) ?? []),
  );
  const texts: string[] = [];
  const walk = (node: Node): void => {
    if (node.nodeType === 3) texts.push(node.textContent ?? '');
    node.childNodes.forEach(walk);
  };
  walk(document.documentElement);
  return [...texts, ...attributes].map(text => text.replace(/\s+/g, ' ').trim()).join('\n');
}

/** Every text of some words that is a constant, by where it stands. */
function constants(words: object, path = ''): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(words).flatMap(([name, value]): (readonly [string, string])[] => {
      const at = path === '' ? name : `${path}.${name}`;
      if (typeof value === 'string') return [[at, value]];
      return value !== null && typeof value === 'object' ? [...constants(value, at)] : [];
    }),
  );
}

/** Words that are the same in both languages: names of dances and of file kinds, and signs. */
const alike = new Set(['Finger', 'Form', 'Phrase', 'Stop', 'Reel', 'Jig', 'Polka', 'Hornpipe']);

/** Words that only English sentences have, so that a sentence made by a function shows as well. */
const englishOnly =
  /\b(?:the|and|with|your|this|that|which|stroke|strokes|slur|slurs|note|notes|bar|bars|down-bow|up-bow|through|begins|ends|open|low|high|sharp|flat|major|minor|reel|jig|play|again|first|second|beginner|improver|advanced)\b/;

// A private copy has all that a published one has, and the teacher's notes.
describe('a book in German', () => {
  let pages: ReadonlyMap<string, string>;
  beforeAll(async () => {
    pages = await built('german', 'pdf: none\n', true);
  });
  const htmlPages = () => [...pages].filter(([path]) => path.endsWith('.html'));

  it('says so on every page', () => {
    expect(htmlPages().length).toBeGreaterThan(8);
    for (const [path, html] of htmlPages()) {
      const root = new JSDOM(html).window.document.documentElement;
      expect([path, root.lang, root.dataset.noteNames]).toEqual([path, 'de', 'german']);
    }
  });

  it('has none of the constant texts of the English words on any page', () => {
    const ours = new Set(constants(german).values());
    const theirs = [...constants(english)].filter(([, text]) => !ours.has(text) && text.length > 3);
    expect(theirs.length).toBeGreaterThan(200);
    for (const [path, html] of htmlPages()) {
      const lines = new Set(wordsOn(html).split('\n'));
      const left = theirs.filter(([, text]) => lines.has(text) && !alike.has(text));
      expect([path, left]).toEqual([path, []]);
    }
  });

  it('has no sentence that English made', () => {
    for (const [path, html] of htmlPages()) {
      const left = wordsOn(html)
        .split('\n')
        .filter(line => englishOnly.test(line));
      expect([path, left]).toEqual([path, []]);
    }
  });

  it('loads its scripts in German, and no other', () => {
    const asked = htmlPages().flatMap(([, html]) => [
      ...[...html.matchAll(/<script defer src="[^"]*assets\/([^"]+)"/g)].map(m => m[1] ?? ''),
      // What a page fetches when it stands.
      ...[...html.matchAll(/ data-later="([^"]+)"/g)].flatMap(m =>
        (m[1] ?? '').split(' ').map(name => `${name}.js`),
      ),
    ]);
    const scripts = [...new Set(asked)].sort();
    expect(scripts).toEqual(
      ['drills', 'page', 'player', 'review', 'search'].map(s => `${s}.de.js`),
    );
    const shipped = [...pages.keys()].filter(path => /^assets\/.*\.js$/.test(path));
    // The page loads the place to try strokes by itself, when it is opened.
    const all = [...scripts, 'try.de.js'].map(name => `assets/${name}`);
    expect(shipped.sort()).toEqual(all);
    expect(pages.get('assets/page.de.js')).toMatch(/assets\/\$\{/);
    for (const path of shipped) {
      const text = pages.get(path) ?? '';
      const theirs = [...constants(english).values()].filter(t => t.length > 24);
      expect([path, theirs.filter(t => text.includes(t))]).toEqual([path, []]);
    }
  });

  it('writes days the German way', () => {
    const front = wordsOn(pages.get('index.html') ?? '');
    expect(front).toContain('Dienstag, 22. September 2026');
  });

  // German names of notes: H for B natural, B for B flat, Fis, Es (common practice).
  it('calls notes by their German names', () => {
    const page = wordsOn(pages.get('tunes/eiskeller.html') ?? '');
    expect(page).toContain('H, 1 auf A');
    expect(page).toContain('B, tiefer 1 auf A');
    expect(page).toContain('Fis');
    expect(wordsOn(pages.get('tunes/treppe.html') ?? '')).toContain('h-Moll');
    const entries = pages.get('tunes/entries.js') ?? '';
    expect(entries).toContain('"letters":"GHAHDHAH');
  });
});

describe('the names of notes in a German book', () => {
  it.each<[NoteNames, string, string]>([
    ['letters', 'B, 1 auf A', 'B-Be, tiefer 1 auf A'],
    ['german', 'H, 1 auf A', 'B, tiefer 1 auf A'],
    ['solfege', 'si, 1 auf la', 'si-Be, tiefer 1 auf la'],
  ])('%s', async (names, natural, flat) => {
    const pages = await built(names, `pdf: none\nnote-names: ${names}\n`);
    const page = wordsOn(pages.get('tunes/eiskeller.html') ?? '');
    expect(page).toContain(natural);
    expect(page).toContain(flat);
  });

  it('stand on paper too', async () => {
    const root = join(folder, 'paper');
    for (const [path, text] of Object.entries(germanBook('pdf: [book, sheets]\n'))) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    const out = join(folder, 'paper-site');
    const { failed } = await buildSite({ root, out, isPrivate: false, progress: () => {} });
    expect(failed).toBe(false);
    const pdf = readFileSync(join(out, 'print/tune-book.pdf'), 'latin1');
    expect(pdf).toMatch(/\/Lang ?\(de\)/);
  });
});

describe('words for a language', () => {
  it('are those of its base, or English', () => {
    expect(wordedIn('de-AT')).toBe('de');
    expect(wordsFor('de-CH', 'german').siteWords.lessons).toBe('Stunden');
    expect(wordsFor('fr', 'solfege').siteWords.lessons).toBe('Lessons');
    expect(['en', 'en-US', 'de', 'de-AT', 'fr', 'den'].map(localeOf)).toEqual([
      'en-GB',
      'en-US',
      'de',
      'de-AT',
      'en-GB',
      'en-GB',
    ]);
  });

  it('have the same names in every language', () => {
    const keys = (words: object): string[] => [...constants(words).keys()];
    expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
    expect(keys(german).sort()).toEqual(keys(english).sort());
  });
});

describe('names of notes', () => {
  it.each([
    ['Bb4', 'B'],
    ['B4', 'H'],
    ['B#4', 'His'],
    ['Bbb4', 'Heses'],
    ['F#4', 'Fis'],
    ['F##4', 'Fisis'],
    ['Eb4', 'Es'],
    ['Ab4', 'As'],
    ['Abb4', 'Ases'],
    ['Db4', 'Des'],
    ['Cbb4', 'Ceses'],
  ])('%s in German is %s', (name, said) => {
    const p = parsePitch(name);
    expect(p && germanName(p)).toBe(said);
  });

  it('in writing are symbols with the sign that is still missing', () => {
    const of = (name: string, names: NoteNames) => {
      const p = parsePitch(name);
      return p && noteSymbol(p, names);
    };
    expect(of('Bb4', 'german')).toMatchObject({ symbol: 'B', sign: 0 });
    expect(of('Bb4', 'letters')).toMatchObject({ symbol: 'B', sign: -1 });
    expect(of('F#4', 'solfege')).toMatchObject({ symbol: 'Fa', sign: 1 });
  });

  it.each<[string, NoteNames, string | null]>([
    ['H A H', 'german', 'HAH'],
    ['B A H', 'german', 'BAH'],
    ['fis g as', 'german', 'FGA'],
    ['D H A', 'letters', null],
    ['re fa la', 'solfege', 'DFA'],
    ['remifasol', 'solfege', 'DEFG'],
    ['ré fa♯ si', 'solfege', 'DFB'],
    ['der Eiskeller', 'german', null],
    ['la mer', 'solfege', null],
  ])('%s typed under %s', (text, names, notes) => {
    expect(typedNotes(text, names)).toBe(notes);
  });
});
