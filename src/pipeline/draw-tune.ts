import { type Problem, problem } from '../../shared/problem.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import { parseAll } from '../abc/abcjs-parse.ts';
import { forAbcjs } from '../abc/for-abcjs.ts';
import { engraveTune } from '../engrave/engrave-tune.ts';
import type { Score } from '../engrave/score.ts';
import { downloadEndings } from '../export/tune-downloads.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import { drawPlans } from './draw-plans.ts';
import { creditsOf } from './export-facts.ts';
import type { StudiedTune } from './study-job.ts';

/**
 * Draws a studied tune and writes its line of credits: all that the pages need of it. Where the engraver
 * throws, the tune gets a problem (`drawing-failed`) and no drawing, and the rest of the book is built.
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
      problems.push(problem('drawing-failed', block.place, { facts, actual }));
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
    parse: text => parseAll(forAbcjs(text)),
  });

/** Returns the text of a bar (an index) that a screen reader says in place of the drawing. */
function describeBars(study: Study, words: Words): (bar: number) => string {
  const said = new Map(
    words
      .speakTune(study, words.noteNames)
      .flatMap(p => p.bars.map(b => [b.name, b.text] as const)),
  );
  return bar => said.get(study.tune.bars[bar]?.name ?? '') ?? '';
}
