/**
 * Where real tunes write `P:` in their body, the parts found from repeat signs and double bars
 * alone must begin at the same bars, or the tune is counted under the reason why they do not.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';

const corpus = join(import.meta.dirname, '../../../shared/corpus');
const absent = !existsSync(corpus);
if (absent) console.warn('parts of real tunes skipped: no corpus beside the project');

/** Why the signs alone give other parts than `P:` does. */
type Reason = 'agree' | 'a part of one or two bars' | 'no sign at P:' | 'signs inside a part';

describe.skipIf(absent)('parts of real tunes', () => {
  it('agree with P:, or the reason is known', { timeout: 60_000 }, () => {
    const counts: Record<Reason, number> = {
      agree: 0,
      'a part of one or two bars': 0,
      'no sign at P:': 0,
      'signs inside a part': 0,
    };
    for (const abc of tunesWithParts()) {
      const named = read(abc);
      const unnamed = read(abc.replace(/^P:.*\n/gm, ''));
      if (named && unnamed) counts[reason(named, unnamed)] += 1;
    }
    expect(counts).toEqual({
      agree: 359,
      'a part of one or two bars': 20,
      'no sign at P:': 9,
      'signs inside a part': 4,
    });
  });
});

function reason(named: Tune, unnamed: Tune): Reason {
  const [a, b] = [starts(named), starts(unnamed)];
  if (a.join() === b.join()) return 'agree';
  if (named.parts.some(p => p.bars.length <= 2)) return 'a part of one or two bars';
  return a.every(bar => b.includes(bar)) ? 'signs inside a part' : 'no sign at P:';
}

const starts = (tune: Tune): readonly (number | undefined)[] => tune.parts.map(p => p.bars[0]);

const read = (text: string): Tune | undefined =>
  parseTunes({ text, file: 'corpus', line: 1, indent: 0 }).tunes[0];

const tunesWithParts = (): readonly string[] =>
  readdirSync(corpus)
    .filter(file => file.endsWith('.abc'))
    .flatMap(file => readFileSync(join(corpus, file), 'utf8').split(/^(?=X:)/m))
    .filter(abc => abc.startsWith('X:') && /^K:[^\n]*\n[\s\S]*^P:/m.test(abc));
