import { posix } from 'node:path';
import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { printPaths, sheetsPath } from '../../shared/print-kinds.ts';
import { siteZipPath } from '../../shared/site-zip-path.ts';
import { aroundSite } from '../../src/pages/around-site.ts';
import { siteAssets } from '../../src/pages/assets.ts';
import { demoBook, demoPages, emptyPages } from './demo-class.ts';

const pages = demoPages(false);
const privatePages = demoPages(true);
const documents = new Map(pages.map(p => [p.path, new JSDOM(p.html).window.document] as const));
const page = (path: string): Document => {
  const found = documents.get(path);
  if (!found) throw new Error(`no page ${path} among ${[...documents.keys()].join(', ')}`);
  return found;
};
const text = (path: string): string => page(path).body.textContent?.replace(/\s+/g, ' ') ?? '';

test('the fixture is a book without faults', () => {
  expect(demoBook().problems).toEqual([]);
});

test('every kind of page is made', () => {
  expect([...documents.keys()].sort()).toEqual([
    '404.html',
    'how-to-read.html',
    'index.html',
    'lessons/2026-03-03-first.html',
    'lessons/2026-03-10-second.html',
    'lessons/index.html',
    'pages/about.html',
    'review.html',
    'tunes/index.html',
    'tunes/lantern.html',
    'tunes/quay-reel.html',
  ]);
});

describe.each([...documents.keys()])('%s', path => {
  const document = page(path);

  test('has a title, a language, one main heading and the landmarks', () => {
    expect(document.title.length).toBeGreaterThan(3);
    expect(document.documentElement.lang).toBe('en');
    expect(document.querySelectorAll('h1')).toHaveLength(1);
    for (const landmark of ['main', 'header', 'nav', 'footer']) {
      expect(document.querySelector(landmark), landmark).not.toBeNull();
    }
    expect(document.querySelector('a[href="#page"]')).not.toBeNull();
  });

  test('skips no level of heading', () => {
    const levels = [...document.querySelectorAll('h1, h2, h3, h4')].map(h => Number(h.tagName[1]));
    for (const [i, level] of levels.entries()) {
      expect(level, `heading ${i}`).toBeLessThanOrEqual((levels[i - 1] ?? 0) + 1);
    }
  });

  test('keeps to its own content policy: no inline style, script or handler', () => {
    const policy = document.querySelector('meta[http-equiv="Content-Security-Policy"]');
    expect(policy?.getAttribute('content')).toContain("default-src 'none'");
    expect(document.querySelectorAll('style, [style]')).toHaveLength(0);
    for (const script of document.scripts) expect(script.getAttribute('src')).toBeTruthy();
    const handlers = [...document.querySelectorAll('*')].flatMap(e =>
      e.getAttributeNames().filter(n => n.startsWith('on')),
    );
    expect(handlers).toEqual([]);
  });

  test('gives each id once, and names only ids that are there', () => {
    const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    for (const e of document.querySelectorAll('[aria-labelledby]')) {
      expect(ids).toContain(e.getAttribute('aria-labelledby'));
    }
    for (const use of document.querySelectorAll('use')) {
      expect(ids).toContain(use.getAttribute('href')?.slice(1));
    }
  });

  test('links only to what is there, by relative address', () => {
    const around = aroundSite(demoBook(), []);
    const assets = [...siteAssets({ theme: null, language: 'en' }), ...around].map(a => a.path);
    const { book, sheets, pocket } = printPaths;
    const prints = [book, sheets, pocket, ...['lantern', 'quay-reel'].map(sheetsPath), siteZipPath];
    for (const e of document.querySelectorAll('a[href], link[href], script[src]')) {
      const link = e.getAttribute('href') ?? e.getAttribute('src') ?? '';
      expect(link).not.toMatch(/^(?:[a-z]+:|\/)/);
      const [file = '', fragment] = link.split('#');
      const target = file === '' ? path : posix.join(posix.dirname(path), file);
      expect([...documents.keys(), ...assets, ...prints], link).toContain(target);
      if (fragment) expect(page(target).getElementById(fragment), link).not.toBeNull();
    }
  });
});

test('text of the book is escaped', () => {
  expect(page('index.html').querySelector('h1')?.textContent).toBe('The <Quay> & Fiddle');
  expect(pages.find(p => p.path === 'index.html')?.html).toContain('The &lt;Quay&gt; &amp; Fiddle');
});

describe('the front page', () => {
  test('has the newest lesson first, then the earlier ones', () => {
    const links = [...page('index.html').querySelectorAll('main a[href^="lessons/"]')];
    expect(links.map(a => a.getAttribute('href'))).toEqual([
      'lessons/2026-03-10-second.html',
      'lessons/2026-03-10-second.html',
      'lessons/2026-03-03-first.html',
    ]);
  });
});

describe('a private note', () => {
  const secrets = /heron|slower than they want/;

  test('stands on no published page, in no form', () => {
    expect(pages.filter(p => secrets.test(p.html)).map(p => p.path)).toEqual([]);
    expect(pages.filter(p => p.html.includes('class="private')).map(p => p.path)).toEqual([]);
  });

  test('does not tell which tunes it is about', () => {
    const links = page('tunes/lantern.html').querySelectorAll('main a[href*="second"]');
    expect(links).toHaveLength(0);
  });

  test('is shown in a private copy, and every page of that says so', () => {
    const shown = privatePages.filter(p => secrets.test(p.html)).map(p => p.path);
    expect(shown).toEqual(['lessons/2026-03-10-second.html', 'tunes/quay-reel.html']);
    for (const p of privatePages) expect(p.html).toContain('class="private-flag"');
  });
});

describe('a tune whose rights are unknown', () => {
  test('has its map and credits, and none of its notes', () => {
    const tune = page('tunes/lantern.html');
    expect(tune.querySelectorAll('.map .phrase')).toHaveLength(2);
    expect(text('tunes/lantern.html')).toContain('Rights unknown');
    expect(text('tunes/lantern.html')).toContain('The rights in this tune are not known');
    expect(tune.querySelector('.notation, .spoken')).toBeNull();
    expect(tune.querySelector('.opening')?.textContent).toBe('');
    expect(text('tunes/index.html')).not.toMatch(/G B D B/);
  });

  test('is withheld from the lesson that defines it too', () => {
    const lesson = page('lessons/2026-03-03-first.html');
    expect(lesson.querySelector('.notation')).toBeNull();
    expect(lesson.querySelector('.tune .notice')).not.toBeNull();
  });
});

describe('a lesson', () => {
  const lesson = page('lessons/2026-03-10-second.html');

  test('shows an anchor: its notation, why, its stroke and how the bow arrives', () => {
    const anchor = lesson.querySelector('#turn');
    expect(anchor?.querySelectorAll('.stave')).toHaveLength(1);
    expect(anchor?.textContent).toContain('The whole class lands here.');
    expect(anchor?.textContent).toContain('Reach it on an up-bow.');
    // Counted by hand: 7 + 8 + 8 strokes before A4 from a down-bow: the 24th is up.
    expect(anchor?.querySelector('.arrival.agrees')).not.toBeNull();
    expect(anchor?.querySelector('.arrival.misses')).toBeNull();
  });

  test('draws a plan stroke by stroke, in turns, as many as its sentence says', () => {
    const plan = lesson.querySelector('.plans > li');
    expect(plan?.textContent).toContain('23 strokes');
    const strokes = [...(plan?.querySelectorAll('.strokes li') ?? [])];
    expect(strokes).toHaveLength(23);
    expect(strokes.map(s => s.className)).toEqual(
      strokes.map((_, i) => (i % 2 === 0 ? 'down' : 'up')),
    );
  });

  test('draws the best plan in notation, with the passage, once', () => {
    const plan = lesson.querySelector('.plan-block');
    const bars = [...(plan?.querySelectorAll('[data-bar]') ?? [])];
    expect(plan?.querySelectorAll('.notation')).toHaveLength(1);
    expect(new Set(bars.map(b => b.getAttribute('data-bar'))).size).toBe(4);
    expect(plan?.querySelector('.anchor-band')).not.toBeNull();
    // Its ids are the tune's own, which stands elsewhere.
    expect(plan?.querySelectorAll('.stave[id]')).toHaveLength(0);
  });

  test('shows where on the bow the notes of the plan fall, and says it', () => {
    const bow = lesson.querySelector('.bow-path');
    // 23 notes in 23 strokes: a sign each, a dot each.
    expect(bow?.querySelectorAll('use')).toHaveLength(23);
    expect(bow?.querySelectorAll('.bow-note')).toHaveLength(23);
    const names = [...(bow?.querySelectorAll('.bow-bar-name') ?? [])].map(t => t.textContent);
    expect(names).toEqual(['A1', 'A2', 'A3']);
    // By hand: bar A1 is 8 quavers with one crotchet, the fifth note, down; so the downs have three
    // quavers and a crotchet, the ups three; A2 and A3 start up, four quavers each way.
    expect(bow?.textContent).toContain('The bow drifts one crotchet toward the tip');
    expect(bow?.innerHTML).not.toContain('style=');
  });

  test('has words for its stroke signs', () => {
    const signs = page('lessons/2026-03-03-first.html').querySelectorAll('p svg[role="img"]');
    expect([...signs].map(s => s.getAttribute('aria-label'))).toEqual(['down-bow', 'up-bow']);
  });
});

describe('a page of a tune', () => {
  const tune = page('tunes/quay-reel.html');

  test('says every bar, each note with its finger, string and stroke', () => {
    const bars = [...tune.querySelectorAll('.spoken > ol > li')];
    expect(bars).toHaveLength(4);
    const said = bars[0]?.querySelector('.said')?.textContent?.replace(/\s+/g, ' ');
    expect(said).toContain('D open D');
    expect(said).toContain('F sharp high 2 on D');
    const signs = bars[0]?.querySelectorAll('.said use') ?? [];
    expect([...signs].map(u => u.getAttribute('href')).slice(0, 2)).toEqual([
      '#sign-down',
      '#sign-up',
    ]);
  });

  test('names the lessons that it comes in', () => {
    const links = [...tune.querySelectorAll('[aria-labelledby="its-lessons"] a')];
    expect(links.map(a => a.textContent)).toEqual(['The second evening']);
  });

  test('sizes its notation by attributes in staff spaces', () => {
    for (const svg of tune.querySelectorAll('.stave svg')) {
      expect(svg.getAttribute('width')).toMatch(/^[\d.]+em$/);
      expect(svg.getAttribute('height')).toMatch(/^[\d.]+em$/);
    }
  });
});

describe('where something is missing', () => {
  test('an empty book says so, on its front page and in its lists', () => {
    const made = new Map(emptyPages().map(p => [p.path, p.html]));
    expect(made.get('index.html')).toContain('No lesson has been given yet.');
    expect(made.get('lessons/index.html')).toContain('No lesson has been given yet.');
    expect(made.get('tunes/index.html')).toContain('No tune has been written down yet.');
  });

  test('a tune that could not be read has a page that says so, and its story', () => {
    const made = new Map(demoPages(false, true).map(p => [p.path, p.html]));
    const html = made.get('tunes/quay-reel.html') ?? '';
    expect(html).toContain('could not be read');
    expect(html).toContain('A story with a point.');
    expect(html).not.toContain('class="stave"');
    expect(made.get('lessons/2026-03-10-second.html')).toContain('could not be read');
  });
});
