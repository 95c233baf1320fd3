import type { Dice } from '../../shared/drills/dice.ts';

/** Pieces of the languages that a book is written in, to be dropped anywhere. */
export const pieces: Readonly<Record<'abc' | 'markdown' | 'yaml', readonly string[]>> = {
  abc: [
    ...[
      'A',
      'b',
      "c''",
      'D,,',
      '^^f',
      '__B',
      '=c',
      'z',
      'Z3',
      'x',
      'y',
      '2',
      '/',
      '//',
      '3/2',
      '>',
      '<<<',
    ],
    ...[
      '(',
      ')',
      '(3',
      '(5:4:',
      '(9::',
      '[',
      ']',
      '[CEG]2',
      '{',
      '}',
      '{/g}',
      '|',
      '||',
      '|]',
      '[|',
      '|:',
    ],
    ...[
      ':|',
      '::',
      ':|:',
      '[1',
      '[2',
      ':|2',
      '[1,3',
      '["x"',
      '-',
      '~',
      'v',
      'u',
      '.',
      '!3!',
      '!breath!',
    ],
    ...[
      '!',
      '+',
      '"G7/b"',
      '"^hi',
      '"',
      '\n',
      '\\\n',
      ' ',
      '&',
      '[K:Gm]',
      '[M:7/8]',
      '[L:1/64]',
      '[V:2]',
    ],
    ...[
      '\nP:A\n',
      '\nP:A9(B2C)3\n',
      '\nK:Em\n',
      '\nw: la- la_ *|\n',
      '\nV:2\n',
      '%',
      '%%',
      '\nQ:1/4=90\n',
    ],
    ...[
      '\nX:2\n',
      '\nT:',
      '\n\n',
      '\nM:C|\n',
      '\nm:~n2=o/4n/m/4n\n',
      '\nU:T=!trill!\n',
      '\ns:**\n',
      '[r:x]',
    ],
    ...[
      '0',
      '99999',
      '1/0',
      '0/0',
      '-1',
      '/4096',
      '\u0000',
      '\uFEFF',
      '\uD800',
      '\u2028',
      '`',
      '$',
      '#',
      ';',
    ],
  ],
  markdown: [
    ...[
      '---\n',
      '\n',
      '\n\n',
      ':::',
      '::::::',
      '::',
      ':',
      '{',
      '}',
      '[',
      ']',
      '#a',
      '=',
      '"',
      "'",
      '`',
      '```abc\n',
    ],
    ...[
      '```\n',
      '~~~\n',
      '- ',
      '> ',
      '1. ',
      '    ',
      '\t',
      '<b>',
      '<!--',
      '-->',
      '<script>',
      '[^1]',
      '[^1]: x\n',
    ],
    ...[
      '|',
      '---|',
      '**',
      '_',
      '~~',
      '\\',
      '&amp;',
      '&#x0;',
      'https://example.org',
      '](#',
      '](../tunes/',
      '![',
      '%C0',
    ],
    ...[
      '\n:::tune{#t}\n',
      '\n:::anchor{#a bars=A1 start=up}\n',
      '\n:::private\n',
      '\n:::set{#s}\n',
      '\n:::\n',
    ],
    ...[
      '\n::tune{of=short}\n',
      '\n::map{of=short unit=9}\n',
      '\n::plan{to=end}\n',
      '\n::drill{kind=gaps of=short}\n',
    ],
    ...[
      '\n::clip[x]{src=media/a.mp3 at="',
      'A1=0:04 ',
      'B0/3=9:99',
      ':stroke[up]',
      ':notes[A (B_c) d]{from=up}',
    ],
    ...[
      'X:1\n',
      'K:D\n',
      '|:ABcd:|\n',
      '__proto__',
      'constructor',
      '\r',
      '\r\n',
      '\u0000',
      '\uFEFF',
      '\uD800',
      '\u202E',
    ],
  ],
  yaml: [
    ...[
      ': ',
      '- ',
      '\n',
      '\n  ',
      '? ',
      '&a ',
      '*a',
      '<<: ',
      '!!binary ',
      '!!js/function ',
      '|',
      '>',
      "'",
      '"',
      '#',
    ],
    ...[
      '{',
      '}',
      '[',
      ']',
      ',',
      '---\n',
      '...\n',
      '%YAML 9\n',
      'title',
      'tuning',
      'site',
      'rights',
      'presets',
      'steps',
    ],
    ...[
      '~',
      'null',
      'true',
      '.inf',
      '.nan',
      '1e999',
      '0x7',
      '2026-99-99',
      '__proto__',
      'constructor',
      '\t',
      '\u0000',
    ],
    ...[
      'media/a.mp3',
      'https://',
      'javascript:x',
      '#12345',
      '[1,2,5]',
      'GDAE',
      '\r',
      '\u2028',
      '\uD800',
    ],
  ],
};

/** Changes a text in one to six small ways. */
export function mutate(
  text: string,
  own: readonly string[],
  dice: Dice,
  others: readonly string[],
): string {
  let out = text;
  for (let n = 1 + dice.below(6); n > 0; n--) out = changed(out, own, dice, others);
  return out;
}

function changed(
  text: string,
  own: readonly string[],
  dice: Dice,
  others: readonly string[],
): string {
  const from = dice.below(text.length + 1);
  const to = Math.min(text.length, from + 1 + dice.below(dice.pick([2, 8, 60])));
  const [head, span, tail] = [text.slice(0, from), text.slice(from, to), text.slice(to)];
  switch (dice.below(9)) {
    case 0:
      return head + tail;
    case 1:
      return head + span + span + tail;
    case 2:
      return head + span.repeat(dice.pick([3, 10, 40])) + tail;
    case 3:
      return head + tail.slice(0, 30) + span + tail.slice(30);
    case 4:
      return head + String.fromCodePoint(dice.below(dice.pick([0x80, 0x800, 0x10ffff]))) + tail;
    case 5:
      return head;
    case 6: {
      const other = dice.pick(others);
      const at = dice.below(other.length + 1);
      return head + other.slice(at, at + dice.pick([5, 40, 200])) + tail;
    }
    default:
      return head + dice.pick(own) + span + tail;
  }
}

/** A text of nothing but pieces. */
export function jumble(own: readonly string[], dice: Dice): string {
  return Array.from({ length: dice.below(40) }, () => dice.pick(own)).join('');
}
