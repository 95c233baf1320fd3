import { describe, expect, test } from 'vitest';
import type { Block, Book, Page } from '../../src/read/book.ts';
import { bookOf } from '../../src/read/book-of.ts';

const reel = (title: string): string =>
  `\`\`\`abc\nX:1\nT:${title}\nR:reel\nM:4/4\nL:1/8\nK:D\n|:DFAd B2 AF|GEFD E2 CE:|\n\`\`\`\n`;

const marsh = `${reel('Salt Marsh')}\n:::anchor{#marsh-end bars=A2 start=up}\n:::\n\n`;

function book(
  files: Readonly<Record<string, string>>,
  media: readonly string[] = [],
  settings = 'rights: own',
): Book {
  const texts = new Map(Object.entries({ 'bowbook.yaml': `title: x\n${settings}`, ...files }));
  return bookOf('book', { texts, media });
}

function lesson(text: string, media: readonly string[] = []): Page {
  const { lessons, problems } = book({ 'lessons/2026-09-15-first.md': text }, media);
  expect(problems).toEqual([]);
  const [page] = lessons;
  if (!page) throw new Error('no lesson');
  return page;
}

const blocks = <K extends Block['kind']>(page: Page, kind: K): Extract<Block, { kind: K }>[] =>
  page.blocks.filter((b): b is Extract<Block, { kind: K }> => b.kind === kind);

describe('drills', () => {
  test('have a kind, a tune and a seed; the anchor may say which tune', () => {
    const page = lesson(
      `${marsh}${reel('Wet Rope')}\n::drill{kind=gaps}\n\n::drill{kind=into to=marsh-end level=beginner seed=12}\n`,
    );
    const drills = blocks(page, 'drill').map(({ place, ...rest }) => rest);
    expect(drills).toEqual([
      {
        kind: 'drill',
        about: ['wet-rope'],
        drill: 'gaps',
        of: 'wet-rope',
        to: null,
        level: null,
        seed: 1,
      },
      {
        kind: 'drill',
        about: ['salt-marsh'],
        drill: 'into',
        of: 'salt-marsh',
        to: 'marsh-end',
        level: 'beginner',
        seed: 12,
      },
    ]);
  });
});

describe('recordings', () => {
  const media = ['media/quay.mp3', 'media/slowly.mp3'];

  test('are cued by bar and time through, each cue in its place', () => {
    const line = '::clip[On the quay]{src=media/quay.mp3 at="A1=0:04 A1/2=1:21.5, A2/2=83"}';
    const page = lesson(`${marsh}${line}\n`, media);
    const [clip] = blocks(page, 'clip');
    expect(clip?.words).toBe('On the quay');
    expect(clip?.src).toBe('media/quay.mp3');
    expect(clip?.cues.map(({ place, ...cue }) => ({ ...cue, column: place.column }))).toEqual([
      { bar: 'A1', pass: 1, seconds: 4, column: line.indexOf('A1=') + 1 },
      { bar: 'A1/2', pass: 2, seconds: 81.5, column: line.indexOf('A1/2=') + 1 },
      { bar: 'A2/2', pass: 2, seconds: 83, column: line.indexOf('A2/2=') + 1 },
    ]);
  });

  test('may go steadily, and may be named from the page as links are', () => {
    const page = lesson(
      `${marsh}::clip[Slow]{src=../media/quay.mp3 start=0:02.5 tempo=84}\n`,
      media,
    );
    expect(blocks(page, 'clip')[0]).toMatchObject({
      src: 'media/quay.mp3',
      cues: [],
      steady: { start: 2.5, tempo: 84 },
    });
  });

  test('of a learner are published with consent alone, and their media with them', () => {
    const clip = (more: string): string => `${marsh}::clip[Slowly]{src=media/slowly.mp3 ${more}}\n`;
    const read = (more: string, settings?: string): Book =>
      book({ 'lessons/2026-09-15-first.md': clip(more) }, ['media/slowly.mp3'], settings);
    const without = read('learner');
    expect(without.problems.map(p => [p.rule, p.severity])).toEqual([['clip-consent', 'warning']]);
    expect(without.privateMedia).toEqual(['media/slowly.mp3']);
    for (const more of ['learner consent="herself, 2 Nov 2026"', 'learner=no', '']) {
      const { problems, privateMedia } = read(more);
      expect([problems, privateMedia]).toEqual([[], []]);
    }
    // A tune whose rights are unknown withholds its recordings too.
    expect(read('', 'rights: unknown').privateMedia).toEqual(['media/slowly.mp3']);
  });

  test('in a private note stay there', () => {
    const text = `${marsh}:::private\n::clip[Mine]{src=media/quay.mp3}\n:::\n`;
    const { privateMedia } = book({ 'lessons/2026-09-15-first.md': text }, ['media/quay.mp3']);
    expect(privateMedia).toEqual(['media/quay.mp3']);
  });
});

describe('sets', () => {
  test('name tunes by id, by title or by link, and the times through in any plain way', () => {
    const { tunePages, problems } = book({
      'tunes/a.md': marsh,
      'tunes/b.md': `:::tune{#rope}\n${reel('Wet Rope')}:::\n`,
      'tunes/c.md': [
        ':::set{#evening title="To end the evening"}',
        'We go straight on.',
        '',
        '- salt-marsh x3',
        '- Salt Marsh × 2',
        '- Salt Marsh, 4 times',
        '- [the other one](b.md) x 2',
        '- [the other one](../tunes/b.md)',
        ':::',
        '',
        reel('Last One'),
      ].join('\n'),
    });
    expect(problems).toEqual([]);
    const set = tunePages.flatMap(page => blocks(page, 'set'))[0];
    expect(set?.title).toBe('To end the evening');
    expect(set?.tunes).toEqual([
      { of: 'salt-marsh', times: 3 },
      { of: 'salt-marsh', times: 2 },
      { of: 'salt-marsh', times: 4 },
      { of: 'rope', times: 2 },
      { of: 'rope', times: 1 },
    ]);
    expect(JSON.stringify(set?.body)).toContain('We go straight on.');
    expect(JSON.stringify(set?.body)).not.toContain('4 times');
  });

  test('without a title are called after their id', () => {
    const page = lesson(`${marsh}:::set{#harbour-evening}\n1. salt-marsh\n:::\n`);
    expect(blocks(page, 'set')[0]?.title).toBe('Harbour evening');
  });
});

describe('by ear', () => {
  test('is said by the block, else by its page', () => {
    const { lessons } = book({
      'lessons/2026-09-15-first.md': `---\nshow: ear\n---\n${marsh}::tune{of=salt-marsh show=notation}\n`,
      'lessons/2026-09-22-second.md': `:::tune{#rope show=ear}\n${reel('Wet Rope')}:::\n\n::tune{of=rope}\n`,
    });
    const shown = lessons.map(page =>
      page.blocks.flatMap(b => (b.kind === 'tune' || b.kind === 'show-tune' ? [b.byEar] : [])),
    );
    expect(shown).toEqual([
      [true, false],
      [true, false],
    ]);
  });
});

describe('a map', () => {
  test('may have a unit of its own', () => {
    const page = lesson(`${marsh}::map{unit=1}\n\n::map\n`);
    expect(blocks(page, 'map').map(m => m.unit)).toEqual([1, null]);
  });
});

describe('settings for the site', () => {
  test('are read, an address always ending in a slash', () => {
    const yaml = [
      'site: https://example.org/fiddles',
      'colours: { ink: "#1A1A1A", accent: "#005040" }',
      'picture: media/quay.jpg',
      'note-names: german',
      'pdf: [sheets]',
      'steps: [5, 1]',
    ].join('\n');
    const { settings, problems, privateMedia } = book({}, ['media/quay.jpg'], yaml);
    expect(problems).toEqual([]);
    expect(privateMedia).toEqual([]);
    expect(settings).toMatchObject({
      site: 'https://example.org/fiddles/',
      theme: { ink: '#1a1a1a', paper: null, accent: '#005040', picture: 'media/quay.jpg' },
      noteNames: 'german',
      print: ['sheets'],
      steps: [1, 5],
    });
    expect(book({}, [], 'pdf: none').settings.print).toEqual([]);
  });
});
