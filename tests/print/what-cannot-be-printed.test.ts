import { expect, it } from 'vitest';
import { needPoppler, pageTexts } from './poppler.ts';
import { files, printOf } from './print-class.ts';

const lesson = (body: string): Readonly<Record<string, string>> => ({
  ...files,
  'lessons/2026-03-17-third.md': `---\ntitle: The third evening\ndate: 2026-03-17\n---\n\n${body}\n`,
});

/** One black dot. */
const png = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==',
  'base64',
);

it('tells of a character that no font has, once for each text, with its place', context => {
  const { problems, pdf } = printOf(lesson('A snowman ☃ and another ☃.'));
  const found = problems.filter(p => p.rule === 'print-character');
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ actual: '☃ (U+2603)', severity: 'warning' });
  expect(found[0]?.place?.file).toBe('lessons/2026-03-17-third.md');
  needPoppler(context);
  expect(pageTexts(pdf).join('')).toContain('snowman [U+2603]');
});

it('prints sharps, flats and naturals in every kind of text', context => {
  const { problems, pdf } = printOf(
    lesson(
      '## B♭ and **C♯**\n\n**D♮**, *E♭*, ***F♯***, `G♮`\n\n| **A♭** | *B♮* |\n|---|---|\n| ♯ | ♭ |',
    ),
  );
  expect(problems.filter(p => p.rule === 'print-character')).toEqual([]);
  needPoppler(context);
  const text = pageTexts(pdf).join('');
  for (const note of ['B♭', 'C♯', 'D♮', 'E♭', 'F♯', 'G♮', 'A♭', 'B♮']) expect(text).toContain(note);
});

it('leaves out the arrow back from a footnote, which leads nowhere on paper', context => {
  const { problems, pdf } = printOf(lesson('Salt[^1].\n\n[^1]: From the sea.'));
  expect(problems.filter(p => p.rule === 'print-character')).toEqual([]);
  needPoppler(context);
  expect(pageTexts(pdf).join('')).toMatch(/Footnotes\s+1\. From the sea\.\s/);
});

it('tells of one in a title and in the notation', () => {
  const tune = files['tunes/quay-reel.md']?.replace('T:The Quay Reel', 'T:The 漢 Reel') ?? '';
  const { problems } = printOf({
    ...files,
    'tunes/quay-reel.md': tune.replace('|:DFAF', '|:"漢"DFAF'),
  });
  const places = problems.filter(p => p.rule === 'print-character').map(p => p.place?.file);
  expect(places).toContain('tunes/quay-reel.md');
});

it('puts the words of a picture that does not open, and says why', context => {
  const texts = lesson('![The quay at dusk](../media/quay.png)');
  const { problems, pdf } = printOf(texts, {}, { 'media/quay.png': Buffer.from('no picture') });
  const found = problems.filter(p => p.rule === 'print-picture');
  expect(found[0]).toMatchObject({ actual: 'media/quay.png', facts: { why: 'broken' } });
  needPoppler(context);
  expect(pageTexts(pdf).join('')).toContain('The quay at dusk');
});

it('prints a picture that opens, and says nothing', () => {
  const texts = lesson('![The quay at dusk](../media/quay.png)');
  const { problems } = printOf(texts, {}, { 'media/quay.png': png });
  expect(problems.filter(p => p.rule.startsWith('print-'))).toEqual([]);
});

it('takes whatever a teacher writes as words, never as instructions to the typesetter', context => {
  const { problems, pdf } = printOf(
    lesson(
      'Write `#pagebreak()` or "quoted\\\\" or #let x = 1; $x$ <note> @here *and* [so] // on.',
    ),
  );
  expect(problems.filter(p => p.rule.startsWith('print-'))).toEqual([]);
  needPoppler(context);
  const text = pageTexts(pdf).join('').replace(/\s+/g, ' ');
  expect(text).toContain('#pagebreak()');
  expect(text).toContain('#let x = 1; $x$');
  expect(text).toContain('// on.');
});
