import type { AnchorRequest } from '../../shared/bowing/bowing.ts';
import { checkCues } from '../../shared/clips/check-cues.ts';
import { checkDrills } from '../../shared/drills/check-drills.ts';
import { drillSource } from '../../shared/drills/drill-source.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { mayPublish } from '../../shared/rights.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';
import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import { parseAll } from '../abc/abcjs-parse.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import { engraveTune } from '../engrave/engrave-tune.ts';
import type { Score } from '../engrave/score.ts';
import { downloadEndings } from '../export/tune-downloads.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import type { ChainNote } from '../pages/site.ts';
import type {
  AnchorBlock,
  BookSettings,
  ClipBlock,
  DrillBlock,
  NotesBlock,
  PlanBlock,
  Rights,
  TuneBlock,
} from '../read/book.ts';
import { drawPlans } from './draw-plans.ts';
import { creditsOf } from './export-facts.ts';

/** A tune of the book, read and studied; `study` is null where the ABC could not be read. */
export interface StudiedTune {
  readonly block: TuneBlock;
  readonly request: StudyRequest;
  readonly study: Study | null;
  readonly rights: Rights | null;
  readonly problems: readonly Problem[];
}

/**
 * Reads and studies one tune, and holds its recordings' cues and its drills to it. Pure but for the
 * parser: the same tune gives the same study.
 */
export function buildTune(
  block: TuneBlock,
  anchors: readonly AnchorBlock[],
  plans: readonly PlanBlock[],
  clips: readonly ClipBlock[],
  drills: readonly DrillBlock[],
  settings: BookSettings,
): StudiedTune {
  const request: StudyRequest = {
    tuning: block.tuning ?? settings.tuning,
    bowing: { ...settings.bowing, restart: block.restart ?? settings.bowing.restart },
    start: block.start,
    anchors: anchors.map(a => anchorRequest(a, plans)),
    unit: block.unit,
    labels: block.labels,
  };
  const rights = block.rights ?? settings.rights;
  const unknown = problem('rights-unknown', 'warning', block.place, { facts: { tune: block.id } });
  const parsed = parseTunes(block.abc, { id: block.id });
  const problems = [...(rights === null ? [unknown] : []), ...parsed.problems];
  const tune = parsed.tunes[0];
  if (!tune) return { block, request, study: null, rights, problems };
  const study = studyTune(block.type === null ? tune : { ...tune, type: block.type }, request);
  const cues = clips.flatMap(clip => checkCues(study.tune, study.performance, clip.cues));
  const asked = drills.map(({ drill: kind, to, level, seed, place }) => ({
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

/** An anchor, with each level and preset that some plan block asks for, once. */
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

/**
 * Draws a studied tune and words its credits: all that the pages need of it. A tune that the
 * engraver fails on is told of and left without a drawing, and the rest of the book is built.
 */
export function drawTune(
  studied: StudiedTune,
  words: Words,
): {
  readonly built: BuiltTune;
  readonly problems: readonly Problem[];
} {
  const { block, request, study, rights } = studied;
  const problems: Problem[] = [];
  const draw = (drawn: Study): Score => drawStudy(drawn, words);
  const attempt = <T>(draw: (study: Study) => T, otherwise: T): T => {
    try {
      return study === null ? otherwise : draw(study);
    } catch (error) {
      const facts = { tune: study?.tune.title ?? block.id };
      const actual = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
      problems.push(problem('drawing-failed', 'warning', block.place, { facts, actual }));
      return otherwise;
    }
  };
  const built: BuiltTune = {
    block,
    study,
    score: attempt<Score | null>(draw, null),
    planned: attempt<BuiltTune['planned']>(s => drawPlans(s, request, draw), new Map()),
    published: mayPublish(rights),
    credits: creditsOf(studied, words),
    downloads: study === null ? [] : downloadEndings,
  };
  return { built, problems };
}

const drawStudy = (study: Study, words: Words): Score =>
  engraveTune(study, {
    describe: describeBars(study, words),
    noteNames: words.noteNames,
    parse: parseAll,
  });

/** What a screen reader says in place of a drawing, bar by bar, as in the tune in words. */
function describeBars(study: Study, words: Words): (bar: number) => string {
  const said = new Map(
    words
      .speakTune(study, words.noteNames)
      .flatMap(p => p.bars.map(b => [b.name, b.text] as const)),
  );
  return bar => said.get(study.tune.bars[bar]?.name ?? '') ?? '';
}

/** The notes of a `:notes[…]` chain, as written (no key signature); null where they cannot be read. */
export function buildChain(block: NotesBlock, settings: BookSettings): readonly ChainNote[] | null {
  const source = {
    text: `L:1/8\nK:none\n${block.abc}`,
    file: block.place.file,
    line: 1,
    indent: 0,
  };
  const tune = parseTunes(source).tunes[0];
  if (!tune) return null;
  const words = wordsFor(settings.language, settings.noteNames);
  const { performance, fingering, bowing } = studyTune(tune, {
    tuning: settings.tuning,
    bowing: settings.bowing,
    start: block.from ?? 'down',
    anchors: [],
    unit: null,
  });
  return performance.notes.flatMap((sounded, i) => {
    const note = tune.events[sounded.event];
    const stroke = bowing.plan.strokes[bowing.plan.strokeOf[i] ?? -1];
    if (note?.kind !== 'note' || !stroke) return [];
    const stop = fingering[sounded.event]?.at(-1) ?? null;
    return {
      letter: words.spokenPitches(note.pitches, words.noteNames),
      spoken: stop === null ? null : words.spokenStop(stop, settings.tuning, words.noteNames),
      direction: stroke.direction,
      slurred: stroke.notes[0] !== i,
    };
  });
}
