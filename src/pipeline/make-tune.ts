import type { Problem } from '../../shared/problem.ts';
import type { TuneData } from '../../shared/tune-data.ts';
import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import { tuneDownloads } from '../export/tune-downloads.ts';
import type { Content } from '../output/site-file.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import { makePage } from '../pages/make-page.ts';
import { type Opening, openingOf } from '../pages/openings.ts';
import { mayShow } from '../pages/page-context.ts';
import { scriptCall } from '../pages/script-call.ts';
import { tuneCard } from '../pages/tune-card.ts';
import { bodyHtml } from '../read/body-html.ts';
import { buildChain, buildTune, drawTune, type StudiedTune } from './build-tune.ts';
import { exportFacts, mayLeave } from './export-facts.ts';
import type { TuneJob, TuneTask } from './tune-jobs.ts';

/** What a build holds of every tune at once. */
export interface TuneNote {
  readonly id: string;
  readonly title: string;
  /** What lists say of it, a `TuneCard`, as JSON. */
  readonly card: string;
  /** Its ABC could be read. */
  readonly isStudied: boolean;
  readonly problems: readonly Problem[];
  /** Paths of the files that stand beside its page. */
  readonly files: readonly string[];
}

/** Everything made of one tune. */
export interface MadeTune {
  readonly note: TuneNote;
  /** Its study and its drawings. */
  readonly built: BuiltTune;
  /** null where its notes may not be shown, or could not be drawn. */
  readonly opening: Opening | null;
  /** The files beside its page, then the pages that show no other tune. */
  readonly files: readonly MadeFile[];
}

export interface MadeFile {
  readonly path: string;
  readonly from: string;
  readonly content: Content;
}

/** Studies and draws one tune and makes its files and pages. This is what a worker runs. */
export function makeTune({ key, job, pages }: TuneTask): MadeTune {
  const { block, anchors, plans, clips, drills, settings, isPrivate } = job;
  const words = wordsFor(settings.language, settings.noteNames);
  const studied = buildTune(block, anchors, plans, clips, drills, settings);
  const { built, problems } = drawTune(studied, words);
  const files = tuneFiles(studied, isPrivate, words).map(file => ({ ...file, from: key }));
  const card = tuneCard(built, isPrivate, words);
  const note = {
    id: block.id,
    title: card.title,
    card: JSON.stringify(card),
    isStudied: studied.study !== null,
    problems: [...studied.problems, ...problems],
    files: files.map(file => file.path),
  };
  const opening = mayShow(built, { isPrivate }) ? openingOf(built) : null;
  const made = pages.map(({ path, from, recipe }) => ({
    path,
    from,
    content: makePage(recipe, { ...pageInput(job), tunes: new Map([[block.id, built]]) }),
  }));
  return { note, built, opening, files: [...files, ...made] };
}

const pageInput = ({ settings, isPrivate }: TuneJob) => ({
  bodyHtml,
  noteChain: (block: Parameters<typeof buildChain>[0]) => buildChain(block, settings),
  isPrivate,
});

/** The files for one tune: none where its rights are not known. */
function tuneFiles(
  studied: StudiedTune,
  isPrivate: boolean,
  words: Words,
): readonly Omit<MadeFile, 'from'>[] {
  const { block, request, study } = studied;
  if (study === null || !mayLeave(studied, isPrivate)) return [];
  const { id } = block;
  const { tune } = study;
  const data: TuneData = { id, title: tune.title, tune, request };
  return [
    { path: `tunes/${id}.js`, content: scriptCall('bowbookTune', data) },
    ...tuneDownloads(study, exportFacts(studied, words)).map(({ ending, content }) => ({
      path: `tunes/${id}.${ending}`,
      content,
    })),
  ];
}
