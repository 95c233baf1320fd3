import { describe, expect, test } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bodyHtml } from '../../src/read/body-html.ts';
import type { Block, Book, Page } from '../../src/read/book.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { tuningName } from '../fingering/tuning-name.ts';

const abc = '```abc\nX:1\nT:The Miller’s Gate\nM:6/8\nK:G\nGABc|\n```\n';

function book(files: Readonly<Record<string, string>>, media: readonly string[] = []): Book {
  const texts = new Map(Object.entries({ 'bowbook.yaml': 'title: Tuesday tunes', ...files }));
  return bookOf('book', { texts, media });
}

function lesson(text: string, media: readonly string[] = []): Page {
  const { lessons, problems } = book({ 'lessons/2026-09-15-first.md': text }, media);
  expect(problems).toEqual([]);
  const [page] = lessons;
  if (!page) throw new Error('no lesson');
  return page;
}

const html = (page: Page): string => bodyHtml(page.body, i => `<i>${i}</i>`);

function block<K extends Block['kind']>(page: Page, kind: K): Extract<Block, { kind: K }> {
  const found = page.blocks.find((b): b is Extract<Block, { kind: K }> => b.kind === kind);
  if (!found) throw new Error(`no ${kind}`);
  return found;
}

describe('settings', () => {
  test('a book that says nothing is a fiddle book on A4', () => {
    const { settings } = book({});
    expect(settings.bowing).toEqual(defaultBowing);
    expect({ ...settings, bowing: null, tuning: tuningName(settings.tuning) }).toEqual({
      title: 'Tuesday tunes',
      teacher: null,
      about: null,
      language: 'en',
      paper: 'a4',
      tuning: 'GDAE',
      bowing: null,
      rights: null,
      cutName: 'cut',
      site: null,
      theme: null,
      noteNames: 'letters',
      print: ['book', 'sheets', 'pocket'],
      steps: [1, 2, 3, 4, 5],
    });
  });

  test.each([
    ['de', 'german'],
    ['de-AT', 'german'],
    ['den', 'letters'],
    ['en-US', 'letters'],
    ['ga', 'letters'],
  ])('a book in %s that says nothing names its notes: %s', (language, noteNames) => {
    const { settings, problems } = book({ 'bowbook.yaml': `title: T\nlanguage: ${language}\n` });
    expect(problems).toEqual([]);
    expect(settings).toMatchObject({ language, noteNames });
  });

  // Well-formed by BCP 47 (RFC 5646, section 2.1), as the runtime reads it; dates are written by it.
  test.each(['en_GB', 'English', 'en-12', 'de-AT-CH', 'en-'])('%s is no language tag', language => {
    const { settings, problems } = book({ 'bowbook.yaml': `title: T\nlanguage: "${language}"\n` });
    expect(problems).toMatchObject([{ rule: 'setting-value', actual: language }]);
    expect(settings.language).toBe('en');
  });

  test('each setting replaces its own default and no other', () => {
    const { settings, problems } = book({
      'bowbook.yaml': [
        'title: 1845',
        'tuning: [E5, A4, E4, A3]',
        'paper: Letter',
        'level: beginner',
        'levels: { advanced: { longest-slur: 6 } }',
        'presets: { ours: { strong-beat: up, pattern: { every: 1/2, slurs: [0-1/8] }, pickups: slurred }, long-bows: { longest-slur: 5 } }',
        'preset-for: { reel: ours }',
        'tempi: { jig: { slow: 80 } }',
        'restart: part',
        'permission: Nell Farrow, for the class',
        'cut-name: tap',
      ].join('\n'),
    });
    expect(problems).toEqual([]);
    expect(settings.title).toBe('1845');
    expect(tuningName(settings.tuning)).toBe('AEAE');
    expect(settings.paper).toBe('letter');
    expect(settings.rights).toEqual({ kind: 'permission', words: 'Nell Farrow, for the class' });
    expect(settings.cutName).toBe('tap');
    const { bowing } = settings;
    expect(bowing.level).toBe('beginner');
    expect(bowing.restart).toBe('part');
    expect(bowing.limits).toEqual({
      ...defaultBowing.limits,
      advanced: { ...defaultBowing.limits.advanced, longestSlur: 6 },
    });
    expect(bowing.presets.ours).toEqual({
      name: 'ours',
      strongBeat: 'up',
      intoBeat: false,
      phraseEndsChange: false,
      longestSlur: null,
      longestStroke: null,
      pattern: { every: '1/2', slurs: ['0-1/8'] },
      pickups: 'slurred',
      slurOver: 'half-bar',
      hooks: false,
    });
    expect(bowing.presets['long-bows']).toEqual({
      ...defaultBowing.presets['long-bows'],
      longestSlur: 5,
    });
    expect(bowing.presetFor).toEqual({ ...defaultBowing.presetFor, reel: 'ours' });
    expect(bowing.tempi.jig).toEqual({ ...defaultBowing.tempi.jig, slow: 80 });
    expect(bowing.tempi.reel).toEqual(defaultBowing.tempi.reel);
  });
});

describe('tunes', () => {
  test('a fence is a tune, named after its title and placed in its file', () => {
    const tune = block(lesson(`# First\n\n${abc}`), 'tune');
    expect(tune.id).toBe('the-millers-gate');
    expect(tune.abc.text).toBe('X:1\nT:The Miller’s Gate\nM:6/8\nK:G\nGABc|');
    expect(tune.abc.line).toBe(4);
    expect(tune.abc.indent).toBe(0);
  });

  test('a fence in a list knows its indent', () => {
    const inList = abc.replace(/^/gm, '  ').trimEnd();
    const { abc: fence } = block(lesson(`- One\n\n${inList}\n`), 'tune');
    expect(fence).toMatchObject({ line: 4, indent: 2 });
    expect(fence.text).toMatch(/^X:1\nT:/);
  });

  test('a fence may hold several, each with its own line', () => {
    const page = lesson('```abc\nX:1\nT:One\nK:D\nD|\n\nX:2\nT:Two\nK:D\nE|\n```\n');
    const tunes = page.blocks.flatMap(b => (b.kind === 'tune' ? [b] : []));
    expect(tunes.map(t => [t.id, t.abc.line, t.abc.text])).toEqual([
      ['one', 2, 'X:1\nT:One\nK:D\nD|\n'],
      ['two', 7, 'X:2\nT:Two\nK:D\nE|'],
    ]);
    expect(html(page)).toBe('<i>0</i>\n<i>1</i>');
  });

  test('what :::tune says goes before the page, and the page before the book', () => {
    const { tunePages, problems } = book({
      'bowbook.yaml': 'title: T\nrights: own',
      'tunes/a.md': `---\nrights: traditional\ntype: jig\nstart: down\nunit: 4\nlabels: a b\n---\n:::tune{#a permission="Nell’s leave" start=up tuning=ADAE}\nIts story.\n\n${abc}:::\n`,
      'tunes/b.md': abc,
      'tunes/c.md': `:::tune{#c rights=unknown}\n${abc}:::\n`,
    });
    expect(problems).toEqual([]);
    const [a, b, c] = tunePages.map(page => block(page, 'tune'));
    expect(a).toMatchObject({
      rights: { kind: 'permission', words: 'Nell’s leave' },
      type: 'jig',
      start: 'up',
      unit: 4,
      labels: { labels: ['a', 'b'], place: { file: 'tunes/a.md', line: 6, column: 9 } },
    });
    expect(a?.tuning && tuningName(a.tuning)).toBe('ADAE');
    expect(a && bodyHtml(a.body, () => '')).toBe('<p>Its story.</p>');
    expect(b?.rights).toEqual({ kind: 'own' });
    expect(c?.rights).toBeNull();
  });

  test('the nearest tune above, defined or shown, is meant where of is left out', () => {
    const page = lesson(
      `${abc}\n::map\n\n\`\`\`abc\nX:1\nT:Slip\nK:D\nD|\n\`\`\`\n\n::map\n\n::tune{of=the-millers-gate bars=A1-A2}\n\n::map\n`,
    );
    const maps = page.blocks.flatMap(b => (b.kind === 'map' ? [b.of] : []));
    expect(maps).toEqual(['the-millers-gate', 'slip', 'the-millers-gate']);
  });
});

describe('labels of phrases', () => {
  test('of the block go before those of the page, and may be a list there', () => {
    const { tunePages, problems } = book({
      'bowbook.yaml': 'title: T\nrights: own',
      'tunes/a.md': `---\nlabels: [a, "b'"]\n---\n${abc}`,
      'tunes/b.md': `---\nlabels: a b\n---\n:::tune{#b labels="c, c' d"}\n${abc}:::\n`,
    });
    expect(problems).toEqual([]);
    const labels = tunePages.map(page => block(page, 'tune').labels);
    expect(labels.map(l => l?.labels)).toEqual([
      ['a', 'b′'],
      ['c', 'c′', 'd'],
    ]);
    expect(labels[1]?.place).toEqual({ file: 'tunes/b.md', line: 4, column: 12 });
  });

  test('that are none are errors, with their place', () => {
    const { problems } = book({
      'bowbook.yaml': 'title: T\nrights: own',
      'tunes/a.md': `---\nlabels: a 1\n---\n${abc}`,
      'tunes/b.md': `:::tune{#b labels="first second"}\n${abc}:::\n`,
    });
    expect(problems.map(p => [p.rule, p.severity, p.place?.file, p.place?.line])).toEqual([
      ['setting-value', 'error', 'tunes/a.md', 2],
      ['attribute-value', 'error', 'tunes/b.md', 1],
    ]);
  });
});

describe('what stands out in an anchor', () => {
  const standsOut = (written: string) => {
    const { lessons, problems } = book({
      'bowbook.yaml': 'title: T\nrights: own',
      'lessons/2026-09-15-a.md': `${abc}\n:::anchor{#end bars=A1${written}}\nWhy.\n:::\n`,
    });
    const [lesson] = lessons;
    if (problems.length > 0) return problems.map(p => [p.rule, p.nearest]);
    return lesson ? block(lesson, 'anchor').standsOut : undefined;
  };
  test('is ours to choose, or as the teacher says', () => {
    expect(standsOut('')).toBeNull();
    expect(standsOut(' stands-out=no')).toEqual([]);
    expect(standsOut(' stands-out="run pairs"')).toEqual(['pairs', 'run']);
    expect(standsOut(' stands-out="runs"')).toEqual([['attribute-value', 'run']]);
  });
});

describe('blocks', () => {
  test('marks stand where blocks stand, in text and in containers', () => {
    const page = lesson(
      `Play :stroke[up] here.\n\n${abc}\n::::anchor{#end bars="B7:3-B8:5" start=up}\nWhy :stroke[down].\n\n:::private\nHm.\n:::\n::::\n\n::plan{to=end level=improver preset=long-bows}\n`,
    );
    expect(html(page)).toBe('<p>Play <i>0</i> here.</p>\n<i>1</i>\n<i>2</i>\n<i>5</i>');
    const anchor = block(page, 'anchor');
    expect(anchor).toMatchObject({
      id: 'end',
      of: 'the-millers-gate',
      bars: { from: { bar: 'B7', note: 3 }, to: { bar: 'B8', note: 5 } },
      start: 'up',
    });
    expect(bodyHtml(anchor.body, i => `<i>${i}</i>`)).toBe('<p>Why <i>3</i>.</p>\n<i>4</i>');
    expect(page.blocks.map(b => b.kind)).toEqual([
      'stroke',
      'tune',
      'anchor',
      'stroke',
      'private',
      'plan',
    ]);
    expect(block(page, 'plan')).toMatchObject({
      to: 'end',
      level: 'improver',
      preset: 'long-bows',
    });
  });

  test('labels are verbatim: accidentals are not emphasis, chords are not links', () => {
    const written = ['_A B_', '^c*d*', '[DA] (Bc)', '!3!A `B`', 'A & B <c>', "c' z"];
    for (const label of written) {
      const page = lesson(`Play :notes[${label}]{from=up} now.\n`);
      expect(block(page, 'notes')).toMatchObject({ abc: label, from: 'up' });
      expect(html(page)).toBe('<p>Play <i>0</i> now.</p>');
    }
  });

  test('times and words after a colon stay text', () => {
    const text = 'At 10:30 or 7:15[b], Remember:slur, see :above and C:major.';
    expect(html(lesson(`${text}\n`))).toBe(`<p>${text}</p>`);
  });

  test('blocks in a private note know it', () => {
    const page = lesson(`${abc}\n:::private\n::map\n:::\n\n::map\n`);
    const maps = page.blocks.filter(b => b.kind === 'map');
    expect(maps.map(b => b.hidden ?? false)).toEqual([true, false]);
  });

  test('with an error in it a page keeps its blocks and loses its text', () => {
    const { lessons } = book({ 'lessons/2026-09-15-first.md': `Hello\n\n${abc}\n::plan{to=x}\n` });
    expect(lessons[0] && html(lessons[0])).toBe('');
    expect(lessons[0]?.blocks.map(b => b.kind)).toEqual(['tune']);
  });
});

describe('pages', () => {
  test('lessons come newest first, by front matter or by file name', () => {
    const { lessons } = book({
      'lessons/2026-09-15-first.md': '# First\n',
      'lessons/b.md': '---\ndate: 2026-09-29\n---\n# Third\n',
      'lessons/2026-09-22-second.md': '---\ntitle: Second\nsummary: Short\n---\nHi\n',
      'lessons/2026-10-06-later.md': '---\nunfinished: true\n---\n# Later\n',
    });
    expect(lessons.map(p => [p.title, p.date, p.slug])).toEqual([
      ['Third', '2026-09-29', 'b'],
      ['Second', '2026-09-22', '2026-09-22-second'],
      ['First', '2026-09-15', '2026-09-15-first'],
    ]);
  });

  test('a title from the heading is not shown twice', () => {
    expect(html(lesson('# First\n\nHi\n'))).toBe('<p>Hi</p>');
    expect(html(lesson('---\ntitle: First\n---\n# Other\n'))).toBe('<h1 id="at-other">Other</h1>');
  });

  test('links lead to pages of the site, and headings can be linked to', () => {
    const { pages, problems } = book(
      {
        'tunes/gate.md': `## Its *Story*\n\n${abc}`,
        'pages/about.md':
          '## Us\n\n[a](../tunes/gate.md#its-story) [b](#us) [c](../media/a%20b.mp3) ![d](../media/d.png) [e](about.md) [f](../index.html) [g](../tunes/the-millers-gate.html)\n',
      },
      ['media/a b.mp3', 'media/d.png'],
    );
    expect(problems).toEqual([]);
    const found = [...(pages[0] ? html(pages[0]) : '').matchAll(/(?:href|src)="([^"]*)"/g)];
    expect(found.map(m => m[1])).toEqual([
      '../tunes/the-millers-gate.html#at-its-story',
      '#at-us',
      '../media/a%20b.mp3',
      '../media/d.png',
      'about.html',
      '../index.html',
      '../tunes/the-millers-gate.html',
    ]);
  });

  test('a page in a folder of its folder keeps its links', () => {
    const { pages, problems } = book({
      'pages/old/a.md': '[b](../b.md) [c](../../tunes/c.md)\n',
      'pages/b.md': '[a](old/a.md)\n',
      'tunes/c.md': abc,
    });
    expect(problems).toEqual([]);
    const links = pages.map(page => [...html(page).matchAll(/href="([^"]*)"/g)].map(m => m[1]));
    expect(links).toEqual([['b.html', '../tunes/the-millers-gate.html'], ['a.html']]);
  });

  test('nothing unsafe is left in a body', () => {
    const { lessons, problems } = book({
      'lessons/2026-09-15-first.md':
        '<script>alert(1)</script>\n\nhm <b onclick="x()">a</b> [b](javascript:alert(1)) [c](&#106;avascript:x) ![d](data:image/png,x) <javascript:e> [f](<java\tscript:x>)\n\n<bow-block data-block="0"></bow-block>\n',
    });
    expect(problems.every(p => p.severity === 'warning')).toBe(true);
    const made = lessons[0] ? html(lessons[0]) : '';
    expect(made).toContain('b c d');
    expect(made).not.toMatch(/<script|onclick|href|src=|<i>|<img/);
  });

  test('media that nothing published names is told apart', () => {
    const media = ['both', 'later', 'none', 'tom', 'us'].map(name => `media/${name}.jpg`);
    const { privateMedia } = book(
      {
        'pages/a.md':
          ':::private\n![t](../media/tom.jpg) ![b](../media/both.jpg)\n:::\n\n![u](../media/us.jpg) ![b](../media/both.jpg)\n',
        'pages/b.md': '---\nunfinished: true\n---\n\n![d](../media/later.jpg)\n',
      },
      media,
    );
    expect(privateMedia).toEqual(['media/later.jpg', 'media/none.jpg', 'media/tom.jpg']);
  });

  test('footnotes of two bodies on one page have ids of their own', () => {
    const page = lesson(
      `One[^1].\n\n:::tune{#gate}\nTwo[^1].\n\n${abc}:::\n\n[^1]: Note :stroke[up].\n`,
    );
    const both = html(page) + bodyHtml(block(page, 'tune').body, i => `<i>${i}</i>`);
    const ids = [...both.matchAll(/ id="([^"]*)"/g)].map(m => m[1]);
    expect(ids.length).toBeGreaterThan(4);
    expect(new Set(ids).size).toBe(ids.length);
    expect(both.match(/Note <i>\d<\/i>/g)).toHaveLength(2);
  });
});
