import { describe, expect, test } from 'vitest';
import { annotateAbc } from '../../shared/notation/annotate-abc.ts';
import type { Study } from '../../shared/study.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { jig, reel, slipJig } from '../engrave/test-tunes.ts';
import { onTunes } from '../tunes/on-tunes.ts';

const all = { marks: 'all', fingers: false, letters: null } as const;

const notesOf = ({ tune }: Study): readonly unknown[] =>
  tune.events.map(e =>
    e.kind === 'note' ? [e.id, e.pitches, e.onset, e.duration, e.tied] : e.kind,
  );

const strokesOf = ({ bowing }: Study): readonly unknown[] =>
  bowing.plan.strokes.map(({ direction, notes }) => [direction, ...notes]);

describe('reading the annotated copy again', () => {
  test.each([
    ['reel', reel],
    ['jig', jig],
    ['slip jig', slipJig],
  ])('%s: same notes, strokes and fingers', (_, text) => {
    const study = composeStudy(text);
    const again = composeStudy(annotateAbc(study, { ...all, fingers: true, letters: 'letters' }));
    expect(notesOf(again)).toEqual(notesOf(study));
    expect(strokesOf(again)).toEqual(strokesOf(study));
    expect(again.fingering).toEqual(study.fingering);
  });

  test('writes a sign for every stroke that is the same each time', () => {
    const study = composeStudy(slipJig);
    const again = composeStudy(annotateAbc(study, all));
    const first = new Map(
      study.bowing.plan.strokes.map(s => [
        study.performance.notes[s.notes[0] ?? -1]?.event,
        s.direction,
      ]),
    );
    expect(study.bowing.varying).toEqual([]);
    again.tune.events.forEach((event, e) => {
      if (event.kind === 'note') expect([e, event.mark]).toEqual([e, first.get(e) ?? null]);
    });
  });

  onTunes('keeps notes and strokes', 9, tunes => {
    for (const { name, abc } of tunes) {
      const study = composeStudy(abc);
      const again = composeStudy(annotateAbc(study, all));
      expect(notesOf(again), name).toEqual(notesOf(study));
      expect(strokesOf(again), name).toEqual(strokesOf(study));
    }
  });
});

test('puts signs after what stands before a note', () => {
  const abc = `X:1\nL:1/8\nM:4/4\nK:G\n"G"({a}Bc) (3vBcd ^c2|~G3 .B !trill!A4|`;
  const study = composeStudy(abc);
  const body = annotateAbc(study, all).split('K:G\n')[1];
  expect(body).toBe(`"G"({a}uBc) (3vBucvd u^c2|~vG3 .uB !trill!vA4|`);
});

test('an excerpt is a tune of its own', () => {
  const study = composeStudy(slipJig);
  const bars = [5, 6];
  const again = composeStudy(annotateAbc(study, { ...all, bars }));
  const whole = study.tune.events.filter(e => bars.includes(e.bar));
  expect(again.tune.events.map(e => (e.kind === 'note' ? e.pitches : null))).toEqual(
    whole.map(e => (e.kind === 'note' ? e.pitches : null)),
  );
});
