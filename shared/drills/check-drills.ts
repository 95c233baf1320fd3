import { type Place, type Problem, problem } from '../problem.ts';
import type { DrillAsk } from './drill.ts';
import type { DrillSource } from './drill-source.ts';
import { kindsFor, makeDrill } from './make-drill.ts';

/** A drill as a page asks for it. */
export interface AskedDrill extends Omit<DrillAsk, 'level'> {
  /** null for the book's own. */
  readonly level: DrillAsk['level'] | null;
  readonly place: Place;
}

/** One warning, `drill-impossible`, for each drill that the tune cannot give. */
export function checkDrills(source: DrillSource, asked: readonly AskedDrill[]): Problem[] {
  return asked.flatMap(({ place, level, ...rest }) => {
    const ask = { ...rest, level: level ?? source.settings.level };
    const { why } = makeDrill(source, ask);
    if (why === null) return [];
    return problem('drill-impossible', place, {
      facts: { tune: source.tune.title, why },
      actual: ask.kind,
      expected: kindsFor(source, ask),
    });
  });
}
