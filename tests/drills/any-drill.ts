import fc from 'fast-check';
import { levels } from '../../shared/bowing/settings.ts';
import type { Drill, DrillKind } from '../../shared/drills/drill.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import { type Drilled, demoSources, ownSources, realSources } from './drill-sources.ts';

/** The demo's tunes, our own and, where there are any, every eighth real one. */
export const everySource = async (): Promise<Drilled[]> => [
  ...(await demoSources()),
  ...ownSources(),
  ...realSources(8),
];

/** How many times a drill of one kind is asked for; some tunes give none. */
const runs = 1000;

/**
 * Makes some hundred drills of one kind, of any tune, level and seed, and checks each. Returns how
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
