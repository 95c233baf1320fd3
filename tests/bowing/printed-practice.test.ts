/** @module-tag slow */
import { expect, test } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bowingContext } from '../../shared/bowing/lead-in-of.ts';
import { practice1883 } from '../../shared/bowing/practice-1883.ts';
import { slurOdds } from '../../shared/bowing/printed-practice.ts';
import { proposeBowings } from '../../shared/bowing/propose-bowings.ts';
import type { Study } from '../../shared/study.ts';
import { studyJson } from '../../src/export/study-json.ts';
import { type PrintedTune, slurringTunes, unmarked } from '../practice/slurring-tunes.ts';
import { bowedTunesMissing } from '../tunes/real-tunes.ts';
import { studyOf } from './study-of.ts';

/** Slurs of the first proposal for a tune that has lost its own, as `explain --json` prints them: pairs of notes. */
function proposedPairs({ tune }: PrintedTune): ReadonlySet<string> {
  const study: Study = studyOf(unmarked(tune));
  const { performance, fingering, map } = study;
  const context = bowingContext(study.tune, performance, fingering, map, defaultBowing);
  const request = {
    start: null,
    anchors: [],
    preset: 'as-printed-1883',
    level: 'improver',
  } as const;
  const proposals = new Map([[study, proposeBowings(context, request)]]);
  const json = JSON.parse(JSON.stringify(studyJson([study], [], proposals)));
  const slurs: string[][] = json.tunes[0].proposals[0].slurs;
  return new Set(slurs.flatMap(group => group.slice(1).map((note, i) => `${group[i]} ${note}`)));
}

/** Slurred junctions found and missed, those slurred that the book does not, and those over a bar line. */
function score(
  tunes: readonly PrintedTune[],
  slurs: (tune: PrintedTune) => (junction: PrintedTune['junctions'][number]) => boolean,
): { f1: number; overBars: number } {
  const sum = { both: 0, proposed: 0, printed: 0, overBars: 0 };
  for (const tune of tunes) {
    const isSlurred = slurs(tune);
    for (const junction of tune.junctions) {
      const proposed = isSlurred(junction);
      if (proposed) sum.proposed++;
      if (junction.slurred) sum.printed++;
      if (proposed && junction.slurred) sum.both++;
      if (proposed && junction.kind.place.endsWith('bar')) sum.overBars++;
    }
  }
  return {
    f1: (2 * sum.both) / (sum.proposed + sum.printed),
    overBars: sum.overBars / sum.proposed,
  };
}

/**
 * F1 of slurred junctions, ties left out, over all tunes together that slur 6 % or more of theirs. The
 * tunes are those between the ones that `practice-1883.ts` was counted from; their slurs and bow signs
 * are taken out. Baselines: single strokes find none (0); the table alone, each junction for
 * itself, as many as the whole bowing, which it lays so that every part begins down.
 */
test('slurs are proposed where the book prints them: real tunes with printed bowing', context => {
  context.skip(bowedTunesMissing !== null, bowedTunesMissing ?? '');
  const { kept } = slurringTunes();
  expect(kept.length).toBeGreaterThan(100);
  const proposed = score(kept, tune => {
    const pairs = proposedPairs(tune);
    const id = (e: number): string => {
      const event = tune.tune.events[e];
      return event?.kind === 'note' ? event.id : '';
    };
    return ({ before, after }) => pairs.has(`${id(before)} ${id(after)}`);
  });
  const table = score(
    kept,
    () =>
      ({ kind }) =>
        slurOdds(practice1883, kind) > 0,
  );
  console.log(`F1 ${proposed.f1.toFixed(3)}, over bars ${proposed.overBars}; table ${table.f1}`);
  expect(proposed.f1).toBeGreaterThan(0.74);
  expect(proposed.f1).toBeGreaterThan(table.f1 - 0.01);
  expect(proposed.overBars).toBeLessThan(0.02);
});
