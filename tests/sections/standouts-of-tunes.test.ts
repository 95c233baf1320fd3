import { expect } from 'vitest';
import { anchorStandouts } from '../../shared/bowing/anchor-standouts.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { parseTuning } from '../../shared/fingering/tunings.ts';
import type { NoteEvent } from '../../shared/music/tune.ts';
import { chooseStandouts } from '../../shared/sections/standout-names.ts';
import type { Standout } from '../../shared/sections/standouts.ts';
import type { Study } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { studyOf } from '../bowing/study-of.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';

const { standoutSentence, speakTune } = wordsFor('en', 'letters');

const retuned = parseTuning('AEAE') as Tuning;

/** Whether a fact is true of the notes it names, checked by their letters, strings and strokes. */
function isTrue({ tune, fingering, bowing, performance }: Study, standout: Standout): boolean {
  const letter = (e: number): number =>
    'CDEFGAB'.indexOf((tune.events[e] as NoteEvent).pitches.at(-1)?.letter ?? '');
  const stop = (e: number) => fingering[e]?.at(-1);
  const strokes = (e: number): number[] =>
    performance.notes.flatMap((n, i) => (n.event === e ? [bowing.plan.strokeOf[i] ?? -1] : []));
  switch (standout.kind) {
    case 'run':
      return standout.notes.every(
        (n, i) =>
          i === 0 ||
          (letter(n) - letter(standout.notes[i - 1] ?? 0) + 7) % 7 ===
            (standout.way === 'up' ? 1 : 6),
      );
    case 'same-finger': {
      const [a, b] = standout.notes.map(stop);
      return (
        a?.finger === standout.finger && b?.finger === standout.finger && a.string !== b.string
      );
    }
    case 'crossings':
      return standout.crossings.every(c => c.from !== c.to && stop(c.note)?.string === c.to);
    case 'slurred-pairs':
      return standout.pairs.every(([a, b]) => strokes(a).some(s => strokes(b).includes(s)));
    case 'symmetric-strokes':
      return standout.counts.join() === standout.counts.toReversed().join();
  }
}

onTunes('passages have facts that are true, inside them, and four at most', 6, tunes => {
  let facts = 0;
  for (const tune of readTunes(tunes)) {
    const study = studyOf(tune, { tuning: retuned });
    for (const phrase of study.map.phrases) {
      const anchor = { first: phrase.first, last: phrase.end - 1 };
      const found = anchorStandouts(
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
      const chosen = chooseStandouts(found, null);
      expect(chosen.length).toBe(Math.min(4, found.length));
      for (const standout of chosen) {
        expect(standoutSentence(tune, retuned, standout, 'letters')).not.toMatch(
          /undefined|null|NaN/,
        );
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
