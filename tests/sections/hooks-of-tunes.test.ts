import { expect } from 'vitest';
import { anchorHooks } from '../../shared/bowing/anchor-hooks.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { parseTuning } from '../../shared/fingering/tunings.ts';
import type { NoteEvent } from '../../shared/music/tune.ts';
import { chooseHooks } from '../../shared/sections/hook-names.ts';
import type { Hook } from '../../shared/sections/hooks.ts';
import type { Study } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { studyOf } from '../bowing/study-of.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';

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

onTunes('passages have facts that are true, inside them, and four at most', 6, tunes => {
  let facts = 0;
  for (const tune of readTunes(tunes)) {
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
  expect(facts).toBeGreaterThan(500);
});
