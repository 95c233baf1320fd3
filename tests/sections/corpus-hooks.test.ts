import { describe, expect, it } from 'vitest';
import { anchorHooks } from '../../shared/bowing/anchor-hooks.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { parseTuning } from '../../shared/fingering/tunings.ts';
import type { NoteEvent } from '../../shared/music/tune.ts';
import { chooseHooks } from '../../shared/sections/hook-names.ts';
import type { Hook } from '../../shared/sections/hooks.ts';
import type { Study } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyOf } from '../bowing/study-of.ts';
import { corpusFiles, corpusMissing } from '../corpus/corpus.ts';

const { hookSentence, speakTune } = wordsFor('en', 'letters');

const retuned = parseTuning('AEAE') as Tuning;

/** Whether a fact is true of the notes it names, checked by their letters, strings and strokes. */
function isTrue({ tune, fingering, bowing, performance }: Study, hook: Hook): boolean {
  const letter = (e: number): number =>
    'CDEFGAB'.indexOf((tune.events[e] as NoteEvent).pitches.at(-1)?.letter ?? '');
  const stop = (e: number) => fingering[e]?.at(-1);
  const strokes = (e: number): number[] =>
    performance.notes.flatMap((n, i) => (n.event === e ? [bowing.plan.strokeOf[i] ?? -1] : []));
  switch (hook.kind) {
    case 'run':
      return hook.notes.every(
        (n, i) =>
          i === 0 ||
          (letter(n) - letter(hook.notes[i - 1] ?? 0) + 7) % 7 === (hook.way === 'up' ? 1 : 6),
      );
    case 'same-finger': {
      const [a, b] = hook.notes.map(stop);
      return a?.finger === hook.finger && b?.finger === hook.finger && a.string !== b.string;
    }
    case 'crossings':
      return hook.crossings.every(c => c.from !== c.to && stop(c.note)?.string === c.to);
    case 'slurred-pairs':
      return hook.pairs.every(([a, b]) => strokes(a).some(s => strokes(b).includes(s)));
    case 'symmetric-strokes':
      return hook.counts.join() === hook.counts.toReversed().join();
  }
}

describe.skipIf(corpusMissing !== null)(`passages of real tunes ${corpusMissing ?? ''}`, () => {
  it('have facts that are true, inside the passage, and four at most', { timeout: 60_000 }, () => {
    let facts = 0;
    for (const { name, text } of corpusFiles()) {
      // Every sixth tune of a file: a study with its plans takes longer than a map.
      const { tunes } = parseTunes({ text, file: name, line: 1, indent: 0 });
      for (const tune of tunes.filter((_, i) => i % 6 === 0)) {
        const study = studyOf(tune, { tuning: retuned });
        for (const phrase of study.map.phrases) {
          const anchor = { first: phrase.first, last: phrase.end - 1 };
          const found = anchorHooks(
            tune,
            study.performance,
            study.fingering,
            study.bowing.plan,
            anchor,
          );
          expect(
            found.filter(h => !isTrue(study, h)),
            `${tune.title}, ${phrase.name}`,
          ).toEqual([]);
          const chosen = chooseHooks(found, null);
          expect(chosen.length).toBe(Math.min(4, found.length));
          for (const hook of chosen) {
            expect(hookSentence(tune, retuned, hook, 'letters')).not.toMatch(/undefined|null|NaN/);
          }
          facts += chosen.length;
        }
        const said = speakTune(study, 'letters')
          .flatMap(p => p.bars.map(b => b.text))
          .join(' ');
        expect(said, tune.title).not.toMatch(/undefined|null|NaN/);
      }
    }
    expect(facts).toBeGreaterThan(500);
  });
});
