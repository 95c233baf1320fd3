import type { WrittenLength } from '../../shared/music/note-values.ts';
import type { Tune, TuneEvent } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';

export type Beam = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

/** Beams of each note value, outermost first. */
const beamCounts: Readonly<Record<string, number>> = {
  eighth: 1,
  '16th': 2,
  '32nd': 3,
  '64th': 4,
  '128th': 5,
};

/**
 * The beams of each note that has any, by event index, the outermost first. Notes shorter than a crotchet
 * are beamed where no space stands between them in the ABC (ABC 2.1, section 4.7).
 */
export function beamsOf(
  tune: Tune,
  lengths: readonly WrittenLength[],
): ReadonlyMap<number, readonly Beam[]> {
  const counts = tune.events.map((event, e) => countOf(event, at(lengths, e)));
  const beams = new Map<number, readonly Beam[]>();
  for (let first = 0; first < counts.length; ) {
    let end = first + 1;
    const isBeamed = at(counts, first) > 0;
    while (isBeamed && (counts[end] ?? 0) > 0 && meet(tune, end - 1, end)) end += 1;
    if (end > first + 1) {
      for (let e = first; e < end; e++) beams.set(e, beamsAt(counts.slice(first, end), e - first));
    }
    first = end;
  }
  return beams;
}

const countOf = (event: TuneEvent, { pieces }: WrittenLength): number =>
  event.kind === 'note' && pieces.length === 1
    ? (beamCounts[at(pieces, 0).value?.type ?? ''] ?? 0)
    : 0;

/** Whether two neighbouring events stand in one bar without a space between them. */
function meet(tune: Tune, a: number, b: number): boolean {
  const [before, after] = [at(tune.events, a), at(tune.events, b)];
  return before.bar === after.bar && !/\s/.test(tune.source.text.slice(before.stop, after.start));
}

/** The beams of one note of a group, whose notes have so many each. */
const beamsAt = (counts: readonly number[], i: number): readonly Beam[] =>
  Array.from({ length: at(counts, i) }, (_, level): Beam => {
    const has = (k: number): boolean => (counts[k] ?? 0) > level;
    if (has(i - 1)) return has(i + 1) ? 'continue' : 'end';
    if (has(i + 1)) return 'begin';
    return i === 0 ? 'forward hook' : 'backward hook';
  });
