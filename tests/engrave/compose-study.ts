import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import type { Study } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { layStrokes } from '../bowing/lay-strokes.ts';

export function readTune(text: string): Tune {
  const { tunes } = parseTunes({ text, file: 'test.md', line: 1, indent: 0 });
  if (!tunes[0]) throw new Error('no tune in the test text');
  return tunes[0];
}

/** A study without plans: strokes, fingers and map; anchors as given, in event indices. */
export function composeStudy(
  text: string,
  anchors: readonly { readonly first: number; readonly last: number }[] = [],
): Study {
  const tune = readTune(text);
  const performance = playedOrder(tune);
  const { plan } = layStrokes(tune, performance);
  const passes = new Map<number, Set<string>>();
  for (const [i, note] of performance.notes.entries()) {
    const stroke = plan.strokes[plan.strokeOf[i] ?? -1];
    if (!stroke) continue;
    passes.set(note.event, (passes.get(note.event) ?? new Set()).add(stroke.direction));
  }
  return {
    tune,
    performance,
    tuning: fiddleTuning,
    fingering: assignFingers(tune, fiddleTuning).fingering,
    map: mapSections(tune),
    bowing: {
      plan,
      anchors: anchors.map(({ first, last }, i) => ({
        id: `anchor-${i + 1}`,
        first,
        last,
        direction: 'down' as const,
        arrivals: [],
        leadIns: [],
        asked: [],
        mends: [],
        moreMends: 0,
      })),
      repeats: [],
      swaps: [],
      varying: [...passes].filter(([, directions]) => directions.size > 1).map(([event]) => event),
    },
    problems: [],
  };
}
