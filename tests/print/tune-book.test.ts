import { describe, expect, it } from 'vitest';
import { bookmarks, pageTexts, poppler, popplerMissing, spokenAlternatives } from './poppler.ts';
import { files, longTune, printOf } from './print-class.ts';

const withLong = { ...files, 'tunes/long.md': longTune(5) };

describe('the tune book', () => {
  it('has the same bytes for the same book', () => {
    const [first, second] = [printOf(files), printOf(files)];
    expect(first.pdf.equals(second.pdf)).toBe(true);
    expect(printOf({ ...files, 'bowbook.yaml': 'title: Another\n' }).pdf.equals(first.pdf)).toBe(
      false,
    );
  });

  it('puts each tune on one page, or on two that face each other', () => {
    const { notes } = printOf(withLong);
    const starts = notes.filter(n => n.kind === 'tune');
    expect(starts.map(n => n.of).toSorted()).toEqual(['causeway', 'lantern', 'quay-reel']);
    for (const { of, page } of starts) {
      const end = notes.find(n => n.kind === 'tune-end' && n.of === of)?.page ?? 0;
      expect(end - page, of).toBeLessThanOrEqual(1);
      // Odd pages of a bound book are on the right: a tune of two begins on the left.
      if (end > page) expect(page % 2, of).toBe(0);
    }
    const long = starts.find(n => n.of === 'causeway')?.page ?? 0;
    expect(notes.find(n => n.kind === 'tune-end' && n.of === 'causeway')?.page).toBe(long + 1);
  });

  it('says where a tune needs more than two pages', () => {
    const { problems } = printOf(
      { ...files, 'tunes/long.md': longTune(16) },
      { audience: 'large' },
    );
    const long = problems.filter(p => p.rule === 'print-long');
    expect(long.map(p => p.facts.tune)).toContain('The Long Causeway');
    expect(long[0]?.place?.file).toBe('tunes/long.md');
  });
});

describe.skipIf(popplerMissing !== null)('the tune book, read back', () => {
  const printed = printOf(withLong);
  const pages = pageTexts(printed.pdf);
  const titles: Readonly<Record<string, string>> = {
    lantern: 'Lantern in the Rain',
    'quay-reel': 'The Quay Reel',
    causeway: 'The Long Causeway',
  };
  const pageOf = (id: string): number =>
    printed.notes.find(n => n.kind === 'tune' && n.of === id)?.page ?? 0;

  it('has every tune where its heading stands', () => {
    for (const [id, title] of Object.entries(titles)) {
      const page = pages[pageOf(id) - 1] ?? '';
      // The running head comes first, then the title alone on its line.
      expect(page.split('\n').map(l => l.trim())).toContain(title);
    }
  });

  it('numbers contents and indexes by the pages on which the tunes stand', () => {
    const numbersOf = (text: string, title: string): number[] =>
      [...text.matchAll(new RegExp(`${title}[\\s.\u2060]*?(\\d+)`, 'g'))].map(m => Number(m[1]));
    const page = (heading: string): string =>
      pages.find(p => p.includes(heading) && !p.includes('Contents')) ?? '';
    const [contents = ''] = pages.filter(p => /^\s*Contents$/m.test(p));
    for (const [id, title] of Object.entries(titles)) {
      expect(numbersOf(contents, title), `${title} in the contents`).toContain(pageOf(id));
      expect(numbersOf(page('Index of titles'), title), `${title} in the index`).toContain(
        pageOf(id),
      );
      expect(numbersOf(page('Index of openings'), title), `${title} by its opening`).toContain(
        pageOf(id),
      );
    }
    expect(numbersOf(page('Index of titles'), 'The Žluť Candle, see Lantern in the Rain')).toEqual([
      pageOf('lantern'),
    ]);
  });

  it('has a bookmark for every lesson, tune and index, on its page', () => {
    const marks = bookmarks(printed.pdf);
    expect(marks.filter(m => m.depth === 1).map(m => m.title)).toEqual([
      'Contents',
      'How to read the marks',
      'The first evening',
      'The second evening',
      'More tunes',
      'Not printed here',
      'Index of titles',
      'Index of openings',
    ]);
    for (const [id, title] of Object.entries(titles)) {
      expect(marks.filter(m => m.title === title).map(m => [m.page, m.depth])).toEqual([
        [pageOf(id), 2],
      ]);
    }
  });

  it('is tagged as PDF/UA-1, with title, language and a spoken form for every picture', () => {
    const meta = poppler('pdfinfo', printed.pdf, ['-meta']);
    expect(meta).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(meta).toContain('The Quay “Fiddle” Book');
    expect(meta).toContain('en-GB');
    const tree = poppler('pdfinfo', printed.pdf, ['-struct-text']);
    for (const tag of [
      'H1',
      'H2',
      'P',
      'L',
      'LI',
      'Table',
      'TH',
      'TD',
      'Figure',
      'TOC',
      'TOCI',
      'Link',
    ]) {
      expect(tree, tag).toMatch(new RegExp(`^\\s*${tag}\\b`, 'm'));
    }
    const figures = tree.match(/^\s*Figure\b/gm)?.length ?? 0;
    expect(figures).toBeGreaterThan(15);
    const spoken = spokenAlternatives(printed.pdf);
    expect(spoken).toHaveLength(figures);
    expect(spoken.filter(alt => !alt?.trim())).toEqual([]);
    expect(spoken.some(alt => /^A1\. Down: G/.test(alt ?? ''))).toBe(true);
  });

  it('embeds its fonts, draws all notation, and can be searched', () => {
    const fonts = poppler('pdffonts', printed.pdf).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(2);
    for (const font of fonts) expect(font).toMatch(/ yes yes yes /);
    const images = poppler('pdfimages', printed.pdf, ['-list']).trim().split('\n').slice(2);
    expect(images).toEqual([]);
    const text = pages.join('\n');
    expect(text).toContain('By Ansa Loom, 2024');
    expect(text).toContain('in C♯ or B♭ or ♮');
  });

  it('keeps private notes out, and names withheld tunes without their notes', () => {
    const all = pages.join('\n') + spokenAlternatives(printed.pdf).join(' ');
    expect(all).not.toContain('heron');
    const naming = pages.filter(p => p.includes('Nobody’s Air') || p.includes("Nobody's Air"));
    expect(naming.join('\n')).toMatch(/Rights not yet known/);
    expect(printed.notes.some(n => n.of === 'nobodys-air')).toBe(false);
  });

  it('says on paper which page a link leads to', () => {
    const lesson = pages.find(p => p.includes('Start')) ?? '';
    expect(lesson.replace(/\s+/g, ' ')).toContain(`the reel (page ${pageOf('quay-reel')})`);
  });
});
