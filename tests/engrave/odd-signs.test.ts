import abcjs from 'abcjs';
import { describe, expect, it, test } from 'vitest';
import { engraveOn, engraveTune } from '../../src/engrave/engrave-tune.ts';
import type { ParsedTune } from '../../src/engrave/split-lines.ts';
import { composeStudy } from './compose-study.ts';
import { inDocument } from './document-paper.ts';

const head = 'X:1\nT:Kelp Cutters\nM:4/4\nL:1/8\nK:D\n';
const study = (notes: string) => composeStudy(`${head}${notes}\n`);

describe('grace notes before a rest that is not drawn, which ABC 2.1 allows and abcjs cannot place', () => {
  test.each(['d4 {g}x4|d8|]', 'd4 {ab}x4|d8|]', 'd8|{ab}X|d8|]', 'd8|{g}Z|d8|]', '~{ab}x4 d4|]'])(
    'are left out: %s',
    notes => {
      const score = engraveTune(study(notes));
      expect(JSON.stringify(score.cells)).not.toContain('NaN');
      expect(score.cells).toEqual(
        engraveTune(study(notes.replace(/~?\{\w+\}/, m => ' '.repeat(m.length)))).cells,
      );
      expect(inDocument(makePaper => engraveOn(makePaper, study(notes), {}))).toEqual(score);
    },
  );
});

describe('what cannot be drawn is refused, so that the page can say so', () => {
  it('a note longer than there are signs for', () => {
    expect(() => engraveTune(study('D64|A8|]'))).toThrow('there is no sign for a length');
  });

  it('a sign whose place is not a number', () => {
    const parse = (text: string): unknown => {
      const [tune] = abcjs.parseOnly(text) as unknown as ParsedTune[];
      const note = tune?.lines[0]?.staff?.[0]?.voices[0]?.[0] as { pitches?: object[] } | undefined;
      Object.assign(note?.pitches?.[0] ?? {}, { verticalPos: Number.NaN });
      return [tune];
    };
    expect(() => engraveTune(study('DEFG A4|]'), { parse })).toThrow('no place');
  });
});
