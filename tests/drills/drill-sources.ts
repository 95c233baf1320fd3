import { join } from 'node:path';
import type { AnchorRequest, Direction } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { type DrillSource, drillSource } from '../../shared/drills/drill-source.ts';
import { fiddleTuning, parseTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { type StudyRequest, studyTune } from '../../shared/study.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { readTunes, sampleOfReal } from '../tunes/on-tunes.ts';
import { ownTunes } from '../tunes/own-tunes.ts';

/** A tune to drill, with the request it was studied under. */
export interface Drilled {
  readonly name: string;
  readonly source: DrillSource;
  readonly request: StudyRequest;
}

export function drilled(tune: Tune, rest: Partial<StudyRequest> = {}, name = tune.id): Drilled {
  const request: StudyRequest = {
    tuning: fiddleTuning,
    bowing: defaultBowing,
    start: null,
    anchors: [],
    unit: null,
    ...rest,
  };
  return { name, source: drillSource(studyTune(tune, request), request), request };
}

/** The tunes of the demo book, as it studies them. */
export async function demoSources(): Promise<Drilled[]> {
  const { tunes } = await studyBook(join(import.meta.dirname, '../../content'), () => {});
  return tunes.flatMap(({ block, study, request }) =>
    study ? [{ name: block.id, source: drillSource(study, request), request }] : [],
  );
}

/** The project's own tunes, an anchor on the last two bars of each. */
export const ownSources = (): Drilled[] =>
  ownTunes.flatMap((own, i) =>
    readTunes([own]).map(tune => {
      const tuning = own.tuning === null ? null : parseTuning(own.tuning);
      return withLastBars(tune, byTurns(i), own.name, tuning ?? fiddleTuning);
    }),
  );

/** The same of every so-many-th real tune. */
export const realSources = (every: number): Drilled[] =>
  readTunes(sampleOfReal(every)).map((tune, i) => withLastBars(tune, byTurns(i), tune.title));

/** The stroke asked for: often the one that comes there by itself, as often the other. */
const byTurns = (i: number): Direction => (i % 2 === 0 ? 'down' : 'up');

/** The tune with an anchor on its last two bars. */
export function withLastBars(
  tune: Tune,
  start: Direction,
  name: string,
  tuning = fiddleTuning,
): Drilled {
  const bars = (tune.parts.at(-1)?.bars ?? []).filter(b => tune.bars[b]?.endings.length === 0);
  const [from, to] = [bars.at(-2), bars.at(-1)].map(b => tune.bars[b ?? -1]?.name);
  const range = parseBarRange(from && to ? `${from}-${to}` : '');
  const anchor: AnchorRequest[] = range
    ? [{ id: 'end', bars: range, start, level: null, preset: null, place: null }]
    : [];
  return drilled(tune, { tuning, anchors: anchor }, name);
}
