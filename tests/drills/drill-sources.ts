import { join } from 'node:path';
import type { AnchorRequest, Direction } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { type DrillSource, drillSource } from '../../shared/drills/drill-source.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { type StudyRequest, studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { corpusFiles } from '../corpus/corpus.ts';

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

/**
 * Every so-many-th real tune, with an anchor of ours on its last two bars: for one tune on the
 * stroke that comes there by itself, for the next on the other.
 */
export function corpusSources(every: number): Drilled[] {
  const found: Drilled[] = [];
  let count = 0;
  for (const file of corpusFiles()) {
    for (const m of file.text.matchAll(/^X:\s*(\d+)/gm)) {
      if (count++ % every !== 0) continue;
      const source = { text: file.text, file: file.name, line: 1, indent: 0 };
      const [tune] = parseTunes(source, { number: m[1] ?? '' }).tunes;
      if (!tune || tune.bars.length === 0) continue;
      found.push(withLastBars(tune, count % 2 === 0 ? 'down' : 'up', `${file.name} X:${m[1]}`));
    }
  }
  return found;
}

/** The tune with an anchor on its last two bars. */
export function withLastBars(tune: Tune, start: Direction, name: string): Drilled {
  const bars = (tune.parts.at(-1)?.bars ?? []).filter(b => tune.bars[b]?.endings.length === 0);
  const [from, to] = [bars.at(-2), bars.at(-1)].map(b => tune.bars[b ?? -1]?.name);
  const range = parseBarRange(from && to ? `${from}-${to}` : '');
  const anchor: AnchorRequest[] = range
    ? [{ id: 'end', bars: range, start, level: null, preset: null, place: null }]
    : [];
  return drilled(tune, { anchors: anchor }, name);
}
