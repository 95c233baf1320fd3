import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../src/read/book-of.ts';
import { pagesOf } from './demo-class.ts';

/** A reel on a fiddle tuned A E A E, labelled by its teacher, with three anchors. */
const lesson = `# One

:::tune{#low-road tuning=AEAE rights=own labels="a a' m a"}
\`\`\`abc
X:1
T:The Low Road
R:reel
M:4/4
L:1/8
K:A
|:A,CEA cAEC|B,DFB dBFD|A,CEA cAEC|B,DFB A4|
EFGA Bcde|fedc BAGF|A,CEA cAEC|B,DFB dBFD:|
\`\`\`
:::

:::anchor{#all of=low-road bars="A5-A6" start=down}
Up and over.
:::

:::anchor{#some of=low-road bars="A5-A6" start=down stands-out=strings}
:::

:::anchor{#none of=low-road bars="A5-A6" start=down stands-out=no}
:::
`;

const book = bookOf('.', {
  texts: new Map([
    ['bowbook.yaml', 'title: Trial\n'],
    ['lessons/2026-03-03-one.md', lesson],
  ]),
  media: [],
});
const pages = new Map(pagesOf(book).map(p => [p.path, new JSDOM(p.html).window.document]));
const page = (path: string): Document => {
  const found = pages.get(path);
  if (!found) throw new Error(`no page ${path}`);
  return found;
};
const text = (e: Element | null | undefined): string =>
  e?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
const tune = page('tunes/low-road.html');

test('the fixture is a book without faults', () => expect(book.problems).toEqual([]));

describe('a tune for a retuned fiddle', () => {
  test('says how the strings are tuned, and its opening as the hand would call it', () => {
    const facts = [...tune.querySelectorAll('.facts dd')].map(text);
    expect(facts).toContain(
      'tuned A E A E, lowest first; notes and letters are as they sound. Tune slowly, eyes away: a string can break and whip. If in doubt, loosen it and ask a luthier',
    );
    // A3 C#4 E4 A4 sound; on G D A E the same fingers would give G3 B3 D4 and, on the A string, A4.
    expect(facts).toContain('G, B, D, A, C sharp, A, D');
  });
  test('says so note by note, on the strings that are retuned and on no other', () => {
    const bar = tune.querySelector('.spoken > ol > li');
    const said = [...(bar?.querySelectorAll('.said-stroke') ?? [])].map(text);
    expect(said.slice(0, 4)).toEqual([
      'A open low A (as if G)',
      'C sharp high 2 on low A (as if B)',
      'E open low E (as if D)',
      'A open high A',
    ]);
    expect(text(bar?.querySelector('.unseen'))).toContain('C sharp, high 2 on low A, as if B');
  });
});

describe('a block of the map', () => {
  const blocks = [...tune.querySelectorAll('.map .phrase')];
  test('has the teacher’s label, and its first notes with fingers and strings', () => {
    expect(blocks.map(b => text(b.querySelector('b')))).toEqual(['a', 'a′', 'm', 'a']);
    expect(text(blocks[0]?.querySelector('.opening'))).toBe('A C E');
    expect(text(blocks[0]?.querySelector('.fingers'))).toBe('0 2 on low A, 0 on low E');
    expect(text(blocks[0]?.querySelector('.unseen'))).toContain(
      'Begins A, open low A; C sharp, high 2 on low A; E, open low E.',
    );
  });
  test('has a notch at the eighth of the phrase where it first differs', () => {
    // A4 differs from A2 at its fifth quaver: 12 quavers of 16 are past, so the seventh eighth.
    expect(blocks.map(b => /differs-(\d)/.exec(b.className)?.[1] ?? null)).toEqual([
      null,
      '7',
      null,
      null,
    ]);
    expect(blocks.map(b => /kin-(\w+)/.exec(b.className)?.[1])).toEqual([
      'own',
      'ending',
      'own',
      'same',
    ]);
  });
});

describe('what stands out in an anchor', () => {
  const facts = (path: string, id: string): string[] =>
    [...page(path).querySelectorAll(`#${id} .stands-out li`)].map(text);
  test('stands in the lesson and on the tune’s page', () => {
    for (const path of ['lessons/2026-03-03-one.html', 'tunes/low-road.html']) {
      expect(facts(path, 'all')).toEqual([
        'New strings: to high A on an up-bow, to high E on an up-bow, to high A on a down-bow, to low E on a down-bow.',
        'A run of 9 letters up: E, F sharp, G sharp, A, B, C sharp, D, E, F sharp.',
        'A run of 8 letters down: F sharp, E, D, C sharp, B, A, G sharp, F sharp.',
      ]);
    }
  });
  test('is what the teacher keeps of it', () => {
    expect(facts('lessons/2026-03-03-one.html', 'some')).toHaveLength(1);
    expect(page('lessons/2026-03-03-one.html').querySelector('#none .stands-out')).toBeNull();
  });
});
