import type { AnchorRequest } from '../../shared/bowing/bowing.ts';
import { checkCues } from '../../shared/clips/check-cues.ts';
import { checkDrills } from '../../shared/drills/check-drills.ts';
import { drillSource } from '../../shared/drills/drill-source.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import type { Rights } from '../../shared/rights.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import type { AnchorBlock, PlanBlock, TuneBlock } from '../read/book.ts';
import { readEdited } from './read-edited.ts';
import type { TuneJob } from './tune-job.ts';

/** A tune of the book, parsed and studied; `study` is null where the ABC could not be parsed. */
export interface StudiedTune {
  readonly block: TuneBlock;
  readonly request: StudyRequest;
  readonly study: Study | null;
  readonly rights: Rights | null;
  readonly problems: readonly Problem[];
}

/** Parses the ABC of a tune and studies it, and checks its recordings' cues and its drills against it. */
export function studyJob({ block, asks, settings }: Omit<TuneJob, 'isPrivate'>): StudiedTune {
  const request: StudyRequest = {
    tuning: block.tuning ?? settings.tuning,
    bowing: { ...settings.bowing, restart: block.restart ?? settings.bowing.restart },
    start: block.start,
    anchors: asks.anchor.map(a => anchorRequest(a, asks.plan)),
    unit: block.unit,
    labels: block.labels,
  };
  const rights = block.rights ?? settings.rights;
  const unknown = problem('rights-unknown', block.place, { facts: { tune: block.id } });
  const parsed = parseTunes(block.abc, { id: block.id });
  const problems = [...(rights === null ? [unknown] : []), ...parsed.problems];
  const tune = parsed.tunes[0];
  if (!tune) return { block, request, study: null, rights, problems };
  const study = studyTune(
    block.type === null ? tune : { ...tune, type: block.type },
    request,
    readEdited,
  );
  const cues = asks.clip.flatMap(clip => checkCues(study.tune, study.performance, clip.cues));
  const asked = asks.drill.map(({ drill: kind, to, level, seed, place }) => ({
    kind,
    to,
    level,
    seed,
    place,
  }));
  const impossible = checkDrills(drillSource(study, request), asked);
  const found = [...problems, ...study.problems, ...cues, ...impossible];
  return { block, request, study, rights, problems: found };
}

/** The request for an anchor, with each pair of level and preset that its plan blocks ask for, once. */
function anchorRequest(a: AnchorBlock, plans: readonly PlanBlock[]): AnchorRequest {
  const own = plans.filter(p => p.to === a.id && (p.level !== null || p.preset !== null));
  const asked = new Map(own.map(p => [`${p.level} ${p.preset}`, p] as const));
  return {
    id: a.id,
    bars: a.bars,
    start: a.start,
    level: null,
    preset: null,
    asked: [...asked.values()].map(({ level, preset }) => ({ level, preset })),
    place: a.place,
  };
}
