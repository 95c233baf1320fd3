/**
 * Where real tunes write `P:` in their body, the parts found from repeat signs and double bars
 * alone must begin at the same bars, or the tune is counted under the reason why they do not.
 */
import { describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { ownTunes } from '../tunes/own-tunes.ts';
import { realTunes, realTunesMissing } from '../tunes/real-tunes.ts';

/** Why the signs alone give other parts than `P:` does. */
type Reason = 'agree' | 'a part of one or two bars' | 'no sign at P:' | 'signs inside a part';

describe('parts that the signs show', () => {
  it('agree with P: in every tune of our own that has it', () => {
    const counts = countReasons(ownTunes.map(t => t.abc).filter(hasParts));
    expect(counts).toEqual({ ...none, agree: 10 });
  });

  it('agree with P: in real tunes, or the reason is known', { timeout: 60_000 }, context => {
    context.skip(realTunesMissing !== null, realTunesMissing ?? '');
    expect(countReasons(realTunes().filter(hasParts))).toEqual({
      agree: 359,
      'a part of one or two bars': 20,
      'no sign at P:': 9,
      'signs inside a part': 4,
    });
  });
});

const none: Readonly<Record<Reason, number>> = {
  agree: 0,
  'a part of one or two bars': 0,
  'no sign at P:': 0,
  'signs inside a part': 0,
};

function countReasons(tunes: readonly string[]): Record<Reason, number> {
  const counts = { ...none };
  for (const abc of tunes) {
    const named = read(abc);
    const unnamed = read(abc.replace(/^P:.*\n/gm, ''));
    if (named && unnamed) counts[reason(named, unnamed)] += 1;
  }
  return counts;
}

function reason(named: Tune, unnamed: Tune): Reason {
  const [a, b] = [starts(named), starts(unnamed)];
  if (a.join() === b.join()) return 'agree';
  if (named.parts.some(p => p.bars.length <= 2)) return 'a part of one or two bars';
  return a.every(bar => b.includes(bar)) ? 'signs inside a part' : 'no sign at P:';
}

const starts = (tune: Tune): readonly (number | undefined)[] => tune.parts.map(p => p.bars[0]);

const read = (text: string): Tune | undefined =>
  parseTunes({ text, file: 'parts.abc', line: 1, indent: 0 }).tunes[0];

/** Whether `P:` stands in its body. */
const hasParts = (abc: string): boolean => /^K:[^\n]*\n[\s\S]*^P:/m.test(abc);
