/** Whatever a teacher writes, reading it ends in tunes and problems, never in an exception. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { playedOrder } from '../../shared/music/played-order.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';

const token = fc.constantFrom(
  ...[
    'A',
    'b',
    "c'",
    'D,',
    '^f',
    '_B',
    '=c',
    'z',
    'Z2',
    'x',
    'y',
    '2',
    '/',
    '3/2',
    '>',
    '<<',
    '(',
    ')',
  ],
  ...[
    '(3',
    '(5:4:',
    '[',
    ']',
    '[CE]2',
    '{',
    '}',
    '{g}',
    '|',
    '||',
    '|]',
    '|:',
    ':|',
    '::',
    '[1',
    '[2',
  ],
  ...[
    ':|2',
    '[1,3',
    '-',
    '~',
    'v',
    'u',
    '.',
    '!3!',
    '!breath!',
    '!',
    '"G"',
    '"',
    '\n',
    '\\\n',
    ' ',
    '&',
  ],
  ...[
    '[K:G]',
    '[M:6/8]',
    '[L:1/4]',
    '\nP:A\n',
    '\nK:Em\n',
    '\nw: la la\n',
    '\nV:2\n',
    '%',
    '\nQ:1/4=90\n',
  ],
);
const header = fc.constantFrom(
  '',
  'X:1\nK:D\n',
  'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n',
  'M:none\nK:none\n',
  'P:AB(A2\nK:G\n',
);

it('reads any jumble of ABC', () => {
  fc.assert(
    fc.property(header, fc.array(token, { maxLength: 40 }), (head, tokens) => {
      const text = head + tokens.join('');
      const { tunes, problems } = parseTunes({ text, file: 'a.md', line: 1, indent: 0 });
      const lines = text.split('\n').length;
      for (const tune of tunes) {
        const { notes, bars } = playedOrder(tune);
        expect(bars.at(-1)?.end ?? 0).toBe(notes.length);
        expect(new Set(tune.bars.map(b => b.name)).size).toBe(tune.bars.length);
        for (const event of tune.events) {
          expect(event.place.line).toBeLessThanOrEqual(lines);
          expect(event.start).toBeLessThanOrEqual(event.stop);
        }
      }
      for (const p of problems) expect(p.place?.line ?? 1).toBeLessThanOrEqual(lines);
    }),
    { numRuns: 600 },
  );
});
it('reads any text', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 80 }), text => {
      parseTunes({ text, file: 'a.md', line: 1, indent: 0 });
    }),
    { numRuns: 300 },
  );
});
