/** What stands where the teacher's line ends is drawn once (ABC 2.1, sections 4.8 and 6.1.1; common practice of engravers). */
import { expect, it } from 'vitest';
import { parseAll } from '../../src/abc/abcjs-parse.ts';
import { cutCells } from '../../src/engrave/cut-cells.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import type { ParsedTune } from '../../src/engrave/split-lines.ts';
import { splitLines } from '../../src/engrave/split-lines.ts';
import { composeStudy } from './compose-study.ts';

interface Sign {
  readonly accidentals?: readonly { readonly acc: string; readonly note: string }[];
}

const signature = ({ accidentals = [] }: Sign): string =>
  accidentals
    .map(({ acc, note }) => `${note.toLowerCase()}${{ sharp: '#', flat: 'b' }[acc] ?? '='}`)
    .join('');

/** Each cell as its signature and what is drawn in it: `c#|`. */
function drawn(body: string): string[] {
  const { tune, map } = composeStudy(`X:1\nT:T\nM:4/4\nL:1/8\n${body}\n`);
  const [parsed] = parseAll(tune.source.text) as unknown as ParsedTune[];
  if (!parsed) throw new Error('not read');
  return splitLines(parsed, tune, cutCells(tune, map.phrases)).map(
    ({ key, elements }) =>
      `${signature(key as unknown as Sign)}: ${elements
        .map(e => {
          if (e.el_type === 'key') return `K${signature(e as unknown as Sign)}`;
          return e.el_type === 'note' ? 'n' : (e.type ?? e.el_type).replace('bar_', '');
        })
        .join(' ')}`,
  );
}

it.each([
  [
    'a change of key within a part',
    'K:D\nA8|B8|c8|d8|\nK:G\nA8|B8|c8|d8|]',
    [
      'f#c#: n thin n thin',
      'f#c#: n thin n thin Kc=f#',
      'f#: n thin n thin',
      'f#: n thin n thin_thick',
    ],
  ],
  [
    'a change to no sharps at a new part',
    'K:D\nA8|B8|c8|d8||\nK:C\ne8|f8|g8|a8|]',
    [
      'f#c#: n thin n thin',
      'f#c#: n thin n thin_thin Kf=c=',
      ': n thin n thin',
      ': n thin n thin_thick',
    ],
  ],
  [
    'a bar line at both ends of a line break',
    'K:C\nA8|B8|c8|\n|d8|e8|f8|g8|\n|a8|]',
    ['n thin n thin', 'n thin n thin', 'n thin n thin', 'n thin n thin_thick'].map(c => `: ${c}`),
  ],
  [
    'a repeat that closes one line and opens the next',
    'K:C\n|:A8|B8|c8|d8:|\n|:e8|f8|g8|a8:|',
    [
      ': left_repeat n thin n thin',
      ': n thin n right_repeat',
      ': left_repeat n thin n thin',
      ': n thin n right_repeat',
    ],
  ],
])('%s', (_, body, expected) => expect(drawn(body)).toEqual(expected));

it('a fermata over an invisible rest', () => {
  const glyphs = (rest: string): number =>
    engraveTune(composeStudy(`X:1\nT:T\nM:4/4\nL:1/8\nK:D\nA8|B6 ${rest}|]\n`)).glyphs.size;
  expect(glyphs('Hx2')).toBe(glyphs('x2') + 1);
  expect(glyphs('!fermata!x2')).toBe(glyphs('Hx2'));
});
