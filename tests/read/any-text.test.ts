import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bookOf } from '../../src/read/book-of.ts';
import { formatProblems } from '../../src/report/format-problems.ts';

/** A defect in a book never throws, whatever was typed, and all that is said of it has words. */
const pieces = fc.oneof(
  fc.constantFrom(
    ...['---\n', '\n', '\n\n', ':::', '::', ':', '{', '}', '[', ']', '#a', '=', '"', 'of', 'bars'],
    ...['tune', 'anchor', 'private', 'plan', 'map', 'stroke', 'notes', '```abc\n', '```\n'],
    ...['X:1\n', 'T:Slip\n', 'K:D\n', 'title: ', '- ', '> ', '  ', '<b>', '<!--', '-->', '[^1]'],
    ...[
      '::drill{kind=gaps ',
      '::clip[x]{src=',
      'media/a.mp3',
      ' at="',
      'A1=0:0',
      '4',
      'learner',
      '%C0',
    ],
    ...[
      '\n:::set{#s}\n- ',
      ' x3',
      '](../tunes/slip.md)',
      'colours: ',
      'site: ',
      'pdf: ',
      'show=ear',
    ],
    ...['[^1]: x', '](../tunes/', '](#', '%', '&amp;', '__proto__', 'constructor', '\t', '\r'],
  ),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
const text = fc.array(pieces, { maxLength: 30 }).map(parts => parts.join(''));

test('no page and no settings make the reader throw', () => {
  fc.assert(
    fc.property(text, text, text, (settings, lesson, tune) => {
      const texts = new Map([
        ['bowbook.yaml', settings],
        ['lessons/2026-09-15-first.md', lesson],
        ['tunes/slip.md', tune],
      ]);
      const { problems, lessons } = bookOf('book', { texts, media: ['media/a.mp3'] });
      const said = formatProblems(problems, file => texts.get(file) ?? null);
      expect(said.length > 0).toBe(problems.length > 0);
      expect(lessons).toHaveLength(1);
      for (const { place } of problems) {
        const lines = texts.get(place?.file ?? '')?.split(/\r\n?|\n/) ?? [];
        expect(place?.line).toBeLessThanOrEqual(lines.length);
        expect(place?.column).toBeLessThanOrEqual((lines[(place?.line ?? 1) - 1]?.length ?? 0) + 1);
      }
    }),
    { numRuns: 1500 },
  );
});
