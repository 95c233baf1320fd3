import fc from 'fast-check';
import { levels } from '../../shared/bowing/settings.ts';
import type { Drill, DrillKind } from '../../shared/drills/drill.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import { corpusMissing } from '../corpus/corpus.ts';
import { corpusSources, type Drilled, demoSources } from './drill-sources.ts';

if (corpusMissing !== null) console.warn(corpusMissing);

/** The demo's tunes and, where they are kept, every eighth of the real ones. */
export const everySource = async (): Promise<Drilled[]> => [
  ...(await demoSources()),
  ...corpusSources(8),
];

/** Drills of one kind to be checked, and tunes that gave none. */
const runs = 3000;

/**
 * Makes some thousand drills of one kind, of any tune, level and seed, and checks each. Returns how
 * many there were, so that a test can say that it was not idle.
 */
export function checkDrillsOf<K extends DrillKind>(
  sources: readonly Drilled[],
  kind: K,
  check: (drill: Extract<Drill, { kind: K }>, of: Drilled) => void,
  numRuns = runs,
): number {
  let made = 0;
  fc.assert(
    fc.property(
      fc.nat({ max: sources.length - 1 }),
      fc.constantFrom(...levels),
      fc.integer({ min: 1, max: 9999 }),
      (at, level, seed) => {
        const of = sources[at] as Drilled;
        const { drill } = makeDrill(of.source, { kind, level, seed, to: null });
        if (!drill) return;
        made++;
        check(drill as Extract<Drill, { kind: K }>, of);
      },
    ),
    { numRuns },
  );
  return made;
}

export const midiOf = ({ source }: Drilled, event: number): string => {
  const e = source.tune.events[event];
  return e?.kind === 'note' ? e.pitches.map(p => p.midi).join('+') : 'rest';
};
